package quietband.response;

import java.util.Arrays;
import org.hipparchus.complex.Complex;
import org.hipparchus.complex.ComplexField;
import org.hipparchus.linear.Array2DRowFieldMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.FieldLUDecomposition;
import org.hipparchus.linear.FieldMatrix;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/** The residual written down once more from its equations, from a random design's own numbers and nothing of the program. */
final class IndependentResidual {

    private static final ComplexField FIELD = ComplexField.getInstance();

    final RandomDesign d;
    /** The turned sensitivity, per g. */
    final double[] g;
    private final RealMatrix m = MatrixUtils.createRealMatrix(6, 6);
    private final RealMatrix modal;

    IndependentResidual(RandomDesign design) {
        d = design;
        g = rotation(d.sensitivityAxis, d.sensitivityAngle).operate(d.sensitivity);
        double[] j = d.inertia;
        m.setSubMatrix(new double[][] {{d.mass, 0, 0}, {0, d.mass, 0}, {0, 0, d.mass}}, 0, 0);
        m.setSubMatrix(new double[][] {{j[0], -j[3], -j[4]}, {-j[3], j[1], -j[5]}, {-j[4], -j[5], j[2]}}, 3, 3);
        RealMatrix k = MatrixUtils.createRealMatrix(6, 6);
        for (RandomDesign.Spring s : d.springs) {
            RealMatrix b = along(s);
            k = k.add(b.transpose().multiply(MatrixUtils.createRealDiagonalMatrix(s.k())).multiply(b));
        }
        // C = 2 z M Phi diag(w_n) Phi^T M = 2 z M^1/2 (M^-1/2 K M^-1/2)^1/2 M^1/2
        RealMatrix root = new EigenDecompositionSymmetric(m).getSquareRoot();
        RealMatrix inverse = MatrixUtils.inverse(root);
        RealMatrix whitened = inverse.multiply(k).multiply(inverse);
        RealMatrix frequencies = new EigenDecompositionSymmetric(whitened.add(whitened.transpose()).scalarMultiply(0.5)).getSquareRoot();
        modal = root.multiply(frequencies).multiply(root).scalarMultiply(2 * d.modal);
    }

    /** Length of the turned sensitivity: what a residual is small against. */
    double scale() {
        return Math.sqrt(g[0] * g[0] + g[1] * g[1] + g[2] * g[2]);
    }

    /** y_x, y_y, y_z per g of the housing. */
    Complex[] at(double f, boolean sprung, boolean corrected) {
        FieldMatrix<Complex> a = sprung ? acceleration(2 * Math.PI * f) : null;
        Complex[][] crystal = point(a, d.crystal);
        Complex[][] felt = point(d.onPlatform ? a : null, d.sensor);
        Complex[] y = {Complex.ZERO, Complex.ZERO, Complex.ZERO};
        for (int j = 0; j < 3; j++) {
            for (int i = 0; i < 3; i++) {
                y[j] = y[j].add(crystal[i][j].multiply(support(i, f)).multiply(g[i]));
                Complex sensed = felt[0][j].multiply(d.crossAxis[3 * i]).add(felt[1][j].multiply(d.crossAxis[3 * i + 1]))
                    .add(felt[2][j].multiply(d.crossAxis[3 * i + 2]));
                if (corrected) {
                    y[j] = y[j].subtract(path(i, f).multiply(sensed).multiply((d.weights == null ? g : d.weights)[i]));
                }
            }
        }
        return y;
    }

    /** H_m of an axis. */
    Complex support(int i, double f) {
        double r = f / d.supportHz[i];
        return new Complex(1, r / d.supportQ[i]).divide(new Complex(1 - r * r, r / d.supportQ[i]));
    }

    /** The acceleration of the resonator (row: component, column: drive) on the platform. */
    Complex[][] crystal(double f) {
        return point(acceleration(2 * Math.PI * f), d.crystal);
    }

    /** The acceleration of the sensor before its cross axes. */
    Complex[][] sensor(double f) {
        return point(d.onPlatform ? acceleration(2 * Math.PI * f) : null, d.sensor);
    }

    /** P of an axis, errors in it. */
    private Complex path(int i, double f) {
        return nominal(i, f).multiply(polar(1 + d.gain[i], d.phase[i] - 2 * Math.PI * f * d.delay[i]));
    }

    /** The path without its errors. */
    Complex nominal(int i, double f) {
        double w = 2 * Math.PI * f;
        Complex p = polar(1, -w * d.latency);
        p = p.divide(new Complex(1, f / d.bandwidth[i])).divide(new Complex(1, f / d.port));
        double r = f / d.resonanceHz;
        p = p.divide(new Complex(1 - r * r, r / d.resonanceQ));
        p = p.multiply(butterworth(new Complex(0, f / d.lowPassHz), d.lowPassOrder));
        p = p.multiply(butterworth(new Complex(0, -d.highPassHz / f), d.highPassOrder));
        double u = Math.PI * f / d.rate;
        p = p.multiply(polar(Math.sin(u) / u, -u));
        Complex back = polar(1, -w / d.rate);
        double[] s = d.section;
        Complex up = back.multiply(s[1]).add(s[0]).add(back.square().multiply(s[2]));
        Complex down = back.multiply(s[3]).add(1).add(back.square().multiply(s[4]));
        return p.multiply(up).divide(down)
            .multiply(back.multiply(d.taps[1]).add(d.taps[0]).add(back.square().multiply(d.taps[2])));
    }

    /** Low pass of unit corner at s: one over the product of s minus each pole in the left half plane. */
    private static Complex butterworth(Complex s, int order) {
        Complex value = Complex.ONE;
        for (int k = 1; k <= order; k++) {
            value = value.divide(s.subtract(polar(1, Math.PI * (2 * k + order - 1) / (2 * order))));
        }
        return value;
    }

    static Complex polar(double size, double angle) {
        return new Complex(size * Math.cos(angle), size * Math.sin(angle));
    }

    /** A = D^-1 E. */
    private FieldMatrix<Complex> acceleration(double w) {
        FieldMatrix<Complex> left = new Array2DRowFieldMatrix<>(FIELD, 6, 6);
        FieldMatrix<Complex> right = new Array2DRowFieldMatrix<>(FIELD, 6, 3);
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                left.setEntry(i, j, new Complex(-w * w * m.getEntry(i, j), w * modal.getEntry(i, j)));
                if (j < 3) {
                    right.setEntry(i, j, new Complex(0, w * modal.getEntry(i, j)));
                }
            }
        }
        for (RandomDesign.Spring s : d.springs) {
            RealMatrix b = along(s);
            for (int axis = 0; axis < 3; axis++) {
                Complex k = new Complex(s.k()[axis], s.k()[axis] * s.eta()[axis]);
                Complex line = k.reciprocal().multiply(s.mass()).sqrt().multiply(w);
                boolean heavy = s.mass() > 0;
                Complex direct = heavy ? k.multiply(line).multiply(line.cos()).divide(line.sin()) : k;
                Complex transfer = heavy ? k.multiply(line).divide(line.sin()) : k;
                Complex branch = new Complex(0, w * s.c()[axis]);
                if (s.ratio()[axis] > 0) {
                    branch = branch.add(new Complex(0, w * s.ratio()[axis] * s.k()[axis])
                        .divide(new Complex(2 * Math.PI * s.corner()[axis], w)));
                }
                for (int i = 0; i < 6; i++) {
                    for (int j = 0; j < 6; j++) {
                        double outer = b.getEntry(axis, i) * b.getEntry(axis, j);
                        left.addToEntry(i, j, direct.add(branch).multiply(outer));
                        if (j < 3) {
                            right.addToEntry(i, j, transfer.add(branch).multiply(outer));
                        }
                    }
                }
            }
        }
        return new FieldLUDecomposition<>(left).getSolver().solve(right);
    }

    private Complex[][] point(FieldMatrix<Complex> a, double[] position) {
        Complex[][] motion = new Complex[3][3];
        for (int i = 0; i < 3; i++) {
            Arrays.fill(motion[i], Complex.ZERO);
            motion[i][i] = Complex.ONE;
            for (int j = 0; j < 3 && a != null; j++) {
                motion[i][j] = Complex.ZERO;
                for (int c = 0; c < 6; c++) {
                    motion[i][j] = motion[i][j].add(a.getEntry(c, j).multiply(place(position).getEntry(i, c)));
                }
            }
        }
        return motion;
    }

    /** B(p) = [I, -[p]x], p from the centre of gravity. */
    private RealMatrix place(double[] at) {
        double x = at[0] - d.centre[0];
        double y = at[1] - d.centre[1];
        double z = at[2] - d.centre[2];
        return MatrixUtils.createRealMatrix(new double[][] {{1, 0, 0, 0, z, -y}, {0, 1, 0, -z, 0, x}, {0, 0, 1, y, -x, 0}});
    }

    private RealMatrix along(RandomDesign.Spring s) {
        return rotation(s.axis(), s.angle()).transpose().multiply(place(s.at()));
    }

    /** Rodrigues: I + sin a [n]x + (1 - cos a) [n]x^2. */
    private static RealMatrix rotation(double[] axis, double angle) {
        double n = Math.sqrt(axis[0] * axis[0] + axis[1] * axis[1] + axis[2] * axis[2]);
        RealMatrix k = MatrixUtils.createRealMatrix(new double[][] {{0, -axis[2] / n, axis[1] / n}, {axis[2] / n, 0, -axis[0] / n},
            {-axis[1] / n, axis[0] / n, 0}});
        return MatrixUtils.createRealIdentityMatrix(3).add(k.scalarMultiply(Math.sin(angle)))
            .add(k.multiply(k).scalarMultiply(1 - Math.cos(angle)));
    }
}
