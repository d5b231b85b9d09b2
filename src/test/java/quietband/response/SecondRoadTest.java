package quietband.response;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.hipparchus.complex.Complex;
import org.hipparchus.complex.ComplexField;
import org.hipparchus.linear.Array2DRowFieldMatrix;
import org.hipparchus.linear.FieldDecompositionSolver;
import org.hipparchus.linear.FieldLUDecomposition;
import org.hipparchus.linear.FieldMatrix;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Platform.Spring;
import quietband.model.Stack;
import quietband.model.Vec;

/**
 * The residual of every stack by another road: the design's equations in absolute motion, D A = E, as matrices of complex
 * numbers with a library's solver, springs added one by one from their direct and transfer stiffness.
 */
class SecondRoadTest {

    static List<Design> designs() {
        return List.of(Models.shipped("ridge-relay.yaml"), Models.shipped("trial-a.yaml"), Models.of(FULL),
            Models.of(FULL.replace("place: platform", "place: housing").replace("taps: [1.4, -0.4]", "sections: "
                + "{x: [[1, 0.2, 0.1, -0.3, 0.1]], z: [[0.5, 0.5, 0, 0, 0], [1, 0.1, 0, 0.2, 0]]}")));
    }

    private static final String FULL = """
        quietband: 1
        oscillator:
          carrier: 20 MHz
          resonator:
            sensitivity: {x: 0.31 ppb/g, y: -0.52 ppb/g, z: 0.7 ppb/g}
            position: {x: 2 mm, y: -1 mm, z: 5 mm}
            support_resonance: {x: {frequency: 1.2 kHz, q: 30}, z: {frequency: 3 kHz, q: 12}}
            orientation: {axis: {x: 1, y: 2, z: -1}, angle: 37 deg}
        platform:
          mass: 310 g
          inertia: {xx: 90 kg*mm^2, yy: 110 kg*mm^2, zz: 150 kg*mm^2, xy: 7 kg*mm^2, xz: -4 kg*mm^2, yz: 2 kg*mm^2}
          centre_of_gravity: {x: 1.5 mm, y: -0.7 mm, z: 2 mm}
          modal_damping: 0.02
          springs:
            - at: [{x: 25 mm, y: 25 mm, z: -4 mm}, {x: -25 mm, y: 22 mm, z: -4 mm}]
              stiffness: {x: 12 N/mm, y: 9 N/mm, z: 20 N/mm}
              damping: {x: 2 N*s/m, y: 3 N*s/m}
              loss_factor: 8 %
              mass: 4 g
              orientation: {axis: {x: 1, y: 1, z: 0}, angle: 50 deg}
            - at: [{x: -20 mm, y: -26 mm, z: 1 mm}, {x: 24 mm, y: -20 mm, z: 3 mm}]
              stiffness: 15 N/mm
              relaxation: {stiffness_ratio: {x: 0.5, y: 1.5, z: 0.3}, corner: 130 Hz}
              orientation: {axis: z, angle: -20 deg}
        cancellation:
          weights: {x: 0.4 ppb/g, y: -0.5 ppb/g, z: 0.6 ppb/g}
          sensor:
            place: platform
            position: {x: 8 mm, y: 3 mm, z: -2 mm}
            bandwidth: {x: 5 kHz, z: 7 kHz}
            resonance: {x: {frequency: 15 kHz, q: 4}, y: {frequency: 18 kHz, q: 3}}
            cross_axis: {xy: 1 %, yx: -0.6 %, zx: 2 %}
          path:
            sample_rate: 50 kHz
            latency: 11 us
            high_pass: {frequency: 1 Hz, order: 2}
            low_pass: {frequency: 9 kHz, order: 3}
            taps: [1.4, -0.4]
          tuning: {slope: -0.7 ppm/V, bandwidth: 30 kHz}
          error: {gain: {x: 2 %, y: -1 %}, phase: {y: 1 deg, z: -2 deg}, delay: 3 us}
        """;

    // rounding of two different roads; residuals are down to 1e-3 of the sensitivity they are the difference of
    @ParameterizedTest
    @MethodSource("designs")
    void every_stack_agrees_with_a_direct_assembly(Design design) {
        ResidualResponse response = new ResidualResponse(design);
        for (double f : new double[] {10, 33.3, 71, 88, 140, 530, 1210, 2000}) {
            response.at(f);
            for (Stack stack : Stack.of(design)) {
                double[] re = new double[3];
                double[] im = new double[3];
                response.residual(stack, re, im);
                Complex[] other = residual(design, stack, f);
                for (int j = 0; j < 3; j++) {
                    assertThat(other[j].subtract(new Complex(re[j], im[j])).norm())
                        .as(stack + " at " + f + " Hz, axis " + j).isLessThan(1e-11 * response.scale());
                }
            }
        }
    }

    private static Complex[] residual(Design design, Stack stack, double f) {
        double w = 2 * Math.PI * f;
        FieldMatrix<Complex> a = stack.sprung() ? absolute(design.platform().orElseThrow(), w) : null;
        Complex[] y = {Complex.ZERO, Complex.ZERO, Complex.ZERO};
        Vec g = design.oscillator().resonator().mountedSensitivityPerG();
        for (int j = 0; j < 3; j++) {
            Complex[] crystal = point(design, a, design.oscillator().resonator().position(), j);
            for (int i = 0; i < 3; i++) {
                double q = design.oscillator().resonator().supportResonance().q().get(i);
                Complex r = new Complex(f / design.oscillator().resonator().supportResonance().frequencyHz().get(i));
                Complex up = r.divide(q).multiply(Complex.I).add(1);
                Complex h = up.divide(up.subtract(r.square()));
                y[j] = y[j].add(crystal[i].multiply(h).multiply(g.get(i)));
            }
            if (stack.corrected()) {
                y[j] = y[j].subtract(correction(design, a, j, f));
            }
        }
        return y;
    }

    private static Complex correction(Design design, FieldMatrix<Complex> a, int j, double f) {
        Cancellation c = design.cancellation().orElseThrow();
        Complex[] felt = point(design, c.sensor().onPlatform() ? a : null, c.sensor().position(), j);
        Complex s = new Complex(0, 2 * Math.PI * f);
        Complex sum = Complex.ZERO;
        for (int i = 0; i < 3; i++) {
            Complex read = Complex.ZERO;
            for (int k = 0; k < 3; k++) {
                read = read.add(felt[k].multiply(c.sensor().crossAxis().get(3 * i + k)));
            }
            double delay = c.path().latency() + c.error().delay().get(i);
            Complex p = s.multiply(-delay).exp().multiply(1 + c.error().gain().get(i))
                .multiply(new Complex(0, c.error().phase().get(i)).exp());
            p = p.divide(s.divide(2 * Math.PI * c.sensor().bandwidthHz().get(i)).add(1));
            p = p.divide(s.divide(2 * Math.PI * c.tuning().bandwidthHz()).add(1));
            double fr = c.sensor().resonance().frequencyHz().get(i);
            Complex n = s.divide(2 * Math.PI * fr);
            p = p.divide(n.square().add(n.divide(c.sensor().resonance().q().get(i))).add(1));
            if (c.path().highPass().isPresent()) {
                p = p.multiply(butterworth(s.reciprocal().multiply(2 * Math.PI * c.path().highPass().get().frequencyHz()),
                    c.path().highPass().get().order()));
            }
            if (c.path().lowPass().isPresent()) {
                p = p.multiply(butterworth(s.divide(2 * Math.PI * c.path().lowPass().get().frequencyHz()),
                    c.path().lowPass().get().order()));
            }
            double fs = c.path().sampleRateHz();
            if (fs > 0) {
                Complex back = s.divide(-fs).exp();
                // hold: (1 - z^-1)/(s T)
                p = p.multiply(Complex.ONE.subtract(back).divide(s.divide(fs)));
                p = p.multiply(filter(c, i, back));
            }
            sum = sum.add(read.multiply(p).multiply(design.weightsPerG().get(i)));
        }
        return sum;
    }

    private static Complex filter(Cancellation c, int axis, Complex back) {
        int[] index = c.path().filters().get(axis).tapIndex();
        double[] tap = c.path().filters().get(axis).taps();
        Complex value = tap.length == 0 ? Complex.ONE : Complex.ZERO;
        for (int n = 0; n < tap.length; n++) {
            value = value.add(back.pow(index[n]).multiply(tap[n]));
        }
        for (double[] b : c.path().filters().get(axis).sections()) {
            Complex up = back.multiply(back.multiply(b[2]).add(b[1])).add(b[0]);
            value = value.multiply(up).divide(back.multiply(back.multiply(b[4]).add(b[3])).add(1));
        }
        return value;
    }

    /** Butterworth by its real factors: (s^2 + 2 sin((2k+1) pi/(2n)) s + 1), and (s + 1) for odd orders. */
    private static Complex butterworth(Complex s, int order) {
        Complex value = order % 2 == 1 ? s.add(1) : Complex.ONE;
        for (int k = 0; k < order / 2; k++) {
            value = value.multiply(s.square().add(s.multiply(2 * Math.sin(Math.PI * (2 * k + 1) / (2.0 * order)))).add(1));
        }
        return value.reciprocal();
    }

    private static Complex[] point(Design design, FieldMatrix<Complex> a, Vec position, int j) {
        Complex[] u = {Complex.ZERO, Complex.ZERO, Complex.ZERO};
        if (a == null) {
            u[j] = Complex.ONE;
            return u;
        }
        Vec p = position.minus(design.platform().orElseThrow().centreOfGravity());
        // u + theta x p
        u[0] = a.getEntry(0, j).add(a.getEntry(4, j).multiply(p.z())).subtract(a.getEntry(5, j).multiply(p.y()));
        u[1] = a.getEntry(1, j).add(a.getEntry(5, j).multiply(p.x())).subtract(a.getEntry(3, j).multiply(p.z()));
        u[2] = a.getEntry(2, j).add(a.getEntry(3, j).multiply(p.y())).subtract(a.getEntry(4, j).multiply(p.x()));
        return u;
    }

    private static FieldMatrix<Complex> absolute(Platform p, double w) {
        FieldMatrix<Complex> d = new Array2DRowFieldMatrix<>(ComplexField.getInstance(), 6, 6);
        FieldMatrix<Complex> e = new Array2DRowFieldMatrix<>(ComplexField.getInstance(), 6, 3);
        double[][] m = mass(p);
        double[][] modal = modal(p, m);
        for (int i = 0; i < 6; i++) {
            for (int k = 0; k < 6; k++) {
                d.setEntry(i, k, new Complex(-w * w * m[i][k], w * modal[i][k]));
            }
            for (int k = 0; k < 3; k++) {
                e.setEntry(i, k, new Complex(0, w * modal[i][k]));
            }
        }
        for (Spring s : p.springs()) {
            for (int i = 0; i < 3; i++) {
                add(s, i, p.centreOfGravity(), w, d, e);
            }
        }
        FieldDecompositionSolver<Complex> solver = new FieldLUDecomposition<>(d).getSolver();
        return solver.solve(e);
    }

    private static void add(Spring s, int i, Vec centre, double w, FieldMatrix<Complex> d, FieldMatrix<Complex> e) {
        Vec axis = s.orientation().apply(Vec.ZERO.with(quietband.model.Axis.ALL.get(i), 1));
        Vec arm = s.at().minus(centre);
        // a force along the axis at the arm, and its moment arm x axis
        double[] row = {axis.x(), axis.y(), axis.z(), arm.y() * axis.z() - arm.z() * axis.y(),
            arm.z() * axis.x() - arm.x() * axis.z(), arm.x() * axis.y() - arm.y() * axis.x()};
        Complex k = new Complex(1, s.lossFactor().get(i)).multiply(s.stiffness().get(i));
        Complex direct = k;
        Complex transfer = k;
        if (s.mass() > 0) {
            Complex b = new Complex(s.mass()).divide(k).sqrt().multiply(w);
            direct = k.multiply(b).multiply(b.cos()).divide(b.sin());
            transfer = k.multiply(b).divide(b.sin());
        }
        Complex extra = new Complex(0, w * s.damping().get(i));
        double corner = 2 * Math.PI * s.relaxationCornerHz().get(i);
        if (Double.isFinite(corner)) {
            double branch = s.relaxationRatio().get(i) * s.stiffness().get(i);
            extra = extra.add(new Complex(0, w).multiply(branch).divide(new Complex(corner, w)));
        }
        for (int a = 0; a < 6; a++) {
            for (int c = 0; c < 6; c++) {
                d.addToEntry(a, c, direct.add(extra).multiply(row[a] * row[c]));
            }
            for (int c = 0; c < 3; c++) {
                e.addToEntry(a, c, transfer.add(extra).multiply(row[a] * row[c]));
            }
        }
    }

    private static double[][] mass(Platform p) {
        double m = p.mass();
        Platform.Inertia j = p.inertia();
        return new double[][] {{m, 0, 0, 0, 0, 0}, {0, m, 0, 0, 0, 0}, {0, 0, m, 0, 0, 0}, {0, 0, 0, j.xx(), -j.xy(), -j.xz()},
            {0, 0, 0, -j.xy(), j.yy(), -j.yz()}, {0, 0, 0, -j.xz(), -j.yz(), j.zz()}};
    }

    /**
     * Modal damping without modes: C = 2 z M (M^-1 K)^(1/2), the square root by the Denman-Beavers iteration.
     */
    private static double[][] modal(Platform p, double[][] m) {
        double[][] k = new double[6][6];
        for (Spring s : p.springs()) {
            for (int i = 0; i < 3; i++) {
                Vec axis = s.orientation().apply(Vec.ZERO.with(quietband.model.Axis.ALL.get(i), 1));
                Vec arm = s.at().minus(p.centreOfGravity());
                double[] row = {axis.x(), axis.y(), axis.z(), arm.y() * axis.z() - arm.z() * axis.y(),
                    arm.z() * axis.x() - arm.x() * axis.z(), arm.x() * axis.y() - arm.y() * axis.x()};
                for (int a = 0; a < 6; a++) {
                    for (int b = 0; b < 6; b++) {
                        k[a][b] += s.stiffness().get(i) * row[a] * row[b];
                    }
                }
            }
        }
        var mass = new org.hipparchus.linear.Array2DRowRealMatrix(m);
        org.hipparchus.linear.RealMatrix y = inverse(mass).multiply(new org.hipparchus.linear.Array2DRowRealMatrix(k));
        org.hipparchus.linear.RealMatrix z = org.hipparchus.linear.MatrixUtils.createRealIdentityMatrix(6);
        for (int n = 0; n < 60; n++) {
            var next = y.add(inverse(z)).scalarMultiply(0.5);
            z = z.add(inverse(y)).scalarMultiply(0.5);
            y = next;
        }
        return mass.multiply(y).scalarMultiply(2 * p.modalDamping()).getData();
    }

    private static org.hipparchus.linear.RealMatrix inverse(org.hipparchus.linear.RealMatrix a) {
        return new org.hipparchus.linear.LUDecomposition(a).getSolver().getInverse();
    }
}
