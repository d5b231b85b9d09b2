package quietband.tolerance.kernel;

import java.util.List;
import quietband.cancellation.CancellationPath;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Resonance;
import quietband.model.Vec;
import quietband.spectrum.ComplexProduct;

/**
 * The cancellation and resonator of one unit on a block: what differs from the design the block was made for is put on top of it.
 * Filled anew for each unit; one object serves one thread.
 */
public final class UnitPath {

    /** G_i H_i: what the resonator makes of its own acceleration, 1/g. */
    final double[][] cr = new double[3][UnitPlatformSolver.BLOCK];
    final double[][] ci = new double[3][UnitPlatformSolver.BLOCK];
    /** sum_i weight_i P_i X_ik: what the cancellation makes of acceleration k at the sensor, 1/g. */
    final double[][] sr = new double[3][UnitPlatformSolver.BLOCK];
    final double[][] si = new double[3][UnitPlatformSolver.BLOCK];
    /** weight_i P_i. */
    public final double[][] pr = new double[3][UnitPlatformSolver.BLOCK];
    public final double[][] pi = new double[3][UnitPlatformSolver.BLOCK];
    private final double[] dr = new double[UnitPlatformSolver.BLOCK];
    private final double[] di = new double[UnitPlatformSolver.BLOCK];
    private final Design base;
    private final boolean sensorVaries;
    private final boolean supportVaries;
    private Design unit;
    private Vec sensitivity;
    private Vec weights;
    private final double[] late = new double[3];
    /** weight_i (1 + gain error_i) at the error's phase. */
    private final double[] turnRe = new double[3];
    private final double[] turnIm = new double[3];

    /**
     * For units of a design.
     *
     * @param base          the design that the blocks are made for
     * @param sensorVaries  whether sensor bandwidth or resonance differ between units
     * @param supportVaries whether the support resonance does
     */
    UnitPath(Design base, boolean sensorVaries, boolean supportVaries) {
        this.base = base;
        this.sensorVaries = sensorVaries;
        this.supportVaries = supportVaries;
    }

    void fill(Design made) {
        unit = made;
        sensitivity = made.oscillator().resonator().mountedSensitivityPerG();
        weights = made.cancellation().flatMap(Cancellation::weightsPerG).orElse(sensitivity);
        made.cancellation().ifPresent(c -> {
            Cancellation was = base.cancellation().orElseThrow();
            for (int i = 0; i < 3; i++) {
                double phase = c.error().phase().get(i);
                double size = weights.get(i) * (1 + c.error().gain().get(i));
                turnRe[i] = size * StrictMath.cos(phase);
                turnIm[i] = size * StrictMath.sin(phase);
                late[i] = c.error().delay().get(i) - was.error().delay().get(i) + c.path().latency() - was.path().latency();
            }
        });
    }

    /** The unit's weights, 1/g. */
    public Vec weights() {
        return weights;
    }

    /** Works out a block. */
    public void at(FrequencyBlock b) {
        resonator(b);
        unit.cancellation().ifPresent(c -> correction(c, b));
    }

    private void resonator(FrequencyBlock b) {
        Resonance support = unit.oscillator().resonator().supportResonance();
        boolean own = supportVaries && (support.on(0) || support.on(1) || support.on(2));
        if (own) {
            b.support(support, cr, ci);
        }
        for (int i = 0; i < 3; i++) {
            double g = sensitivity.get(i);
            if (own) {
                ComplexArrays.scale(cr[i], ci[i], g, 0, cr[i], ci[i], b.lanes);
            } else if (b.hr == null) {
                ComplexArrays.fill(cr[i], ci[i], g, 0, b.lanes);
            } else {
                ComplexArrays.scale(cr[i], ci[i], g, 0, b.hr[i], b.hi[i], b.lanes);
            }
        }
    }

    private void correction(Cancellation c, FrequencyBlock b) {
        for (int i = 0; i < 3; i++) {
            if (sensorVaries) {
                path(c.sensor(), i, b);
            } else {
                ComplexArrays.scale(pr[i], pi[i], turnRe[i], turnIm[i], b.pr[i], b.pi[i], b.lanes);
            }
            if (late[i] != 0) {
                ComplexArrays.delay(dr, di, b.w, late[i], b.top, b.lanes);
                ComplexArrays.product(pr[i], pi[i], pr[i], pi[i], dr, di, b.lanes);
            }
        }
        List<Double> x = c.sensor().crossAxis();
        for (int k = 0; k < 3; k++) {
            ComplexArrays.mix(sr[k], si[k], x.get(k), pr[0], pi[0], x.get(3 + k), pr[1], pi[1], x.get(6 + k), pr[2], pi[2], b.lanes);
        }
    }

    /** The path of an axis with the unit's own sensor. */
    private void path(Cancellation.Sensor own, int axis, FrequencyBlock b) {
        ComplexProduct p = new ComplexProduct();
        for (int t = 0; t < b.lanes; t++) {
            p.set(turnRe[axis], turnIm[axis]).times(b.afterRe[axis][t], b.afterIm[axis][t]);
            CancellationPath.sensor(p, own, axis, b.f[t]);
            pr[axis][t] = p.re();
            pi[axis][t] = p.im();
        }
    }
}
