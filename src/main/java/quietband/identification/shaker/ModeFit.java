package quietband.identification.shaker;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.stat.StatUtils;
import quietband.numerics.DampedLeastSquares;
import quietband.spectrum.ComplexProduct;

/**
 * Least squares of ln|G(f)| to ln G0 + ln|1 + sum_k c_k r_k^2/(1 - r_k^2 + j r_k/Q_k)|, r_k = f/f_k: a resonator on modes of its
 * support and fixture. c = 1 is a blank of mass on an elastic support, which gives (1 + j r/Q)/(1 - r^2 + j r/Q).
 * Parameters: ln G0, then per mode ln f_k, ln Q_k, c_k.
 */
final class ModeFit implements DampedLeastSquares.Rows {

    private static final DampedLeastSquares METHOD = new DampedLeastSquares(60, 30, 1e-3, 0.3, 1e-14, 1e-12);
    private static final double STEP = 1e-6;

    private final double[] f;
    private final double[] target;
    private final double[] weight;
    private final boolean[] fixed;
    private double[] p;
    private double ssr;

    /**
     * Starts from parameters.
     *
     * @param f      frequencies, Hz
     * @param target ln of the magnitudes
     * @param weight of each squared deviation
     * @param start  parameters, copied
     * @param fixed  which of them stay as they are
     */
    ModeFit(double[] f, double[] target, double[] weight, double[] start, boolean[] fixed) {
        this.f = f;
        this.target = target;
        this.weight = weight;
        this.p = start.clone();
        this.fixed = fixed.clone();
        this.ssr = StatUtils.sumSq(at(p));
    }

    /** Parameters as they stand; do not modify. */
    double[] parameters() {
        return p;
    }

    /** Weighted sum of squared deviations. */
    double ssr() {
        return ssr;
    }

    /** Free parameters. */
    int free() {
        return (int) IntStream.range(0, p.length).filter(i -> !fixed[i]).count();
    }

    /** Modes as f_k in Hz, Q_k, c_k, from parameters. */
    static double[] modes(double[] p) {
        double[] m = new double[p.length - 1];
        for (int k = 0; k + 2 < m.length; k += 3) {
            m[k] = StrictMath.exp(p[k + 1]);
            m[k + 1] = StrictMath.exp(p[k + 2]);
            m[k + 2] = p[k + 3];
        }
        return m;
    }

    /** 1 + sum of modes (f_k, Q_k, c_k) at a frequency in Hz: real and imaginary part. */
    static double[] response(double[] modes, double f) {
        double re = 1;
        double im = 0;
        for (int k = 0; k + 2 < modes.length; k += 3) {
            double r = f / modes[k];
            ComplexProduct mode = new ComplexProduct().set(modes[k + 2] * r * r, 0).resonance(r, modes[k + 1]);
            re += mode.re();
            im += mode.im();
        }
        return new double[] {re, im};
    }

    /** ln of the magnitude of {@link #response}. */
    static double logShape(double[] modes, double f) {
        double[] h = response(modes, f);
        return 0.5 * StrictMath.log(h[0] * h[0] + h[1] * h[1] + 1e-300);
    }

    /** Roots of the weights times what the parameters leave. */
    @Override
    public double[] at(double[] q) {
        double[] modes = modes(q);
        return IntStream.range(0, f.length).mapToDouble(i -> Math.sqrt(weight[i]) * (target[i] - q[0] - logShape(modes, f[i]))).toArray();
    }

    @Override
    public double[][] slopes(double[] q, double[] rest) {
        double[][] columns = new double[q.length][f.length];
        for (int c = 0; c < q.length; c++) {
            double[] up = q.clone();
            double[] down = q.clone();
            up[c] += STEP;
            down[c] -= STEP;
            double[] above = modes(up);
            double[] below = modes(down);
            for (int i = 0; i < f.length && !fixed[c]; i++) {
                columns[c][i] = -Math.sqrt(weight[i]) * (c == 0 ? 1 : (logShape(above, f[i]) - logShape(below, f[i])) / (2 * STEP));
            }
        }
        return columns;
    }

    /** Goes on downhill from where it stands. */
    ModeFit refine() {
        DampedLeastSquares.End end = METHOD.run(this, q -> { }, p);
        p = end.x();
        ssr = end.cost();
        return this;
    }

    /** Variances of the parameters for deviations of weight one with variance one; 0 where fixed. */
    double[] variances() {
        RealMatrix slopes = new Array2DRowRealMatrix(slopes(p, null), false);
        RealMatrix normal = slopes.multiplyTransposed(slopes);
        for (int i = 0; i < p.length; i++) {
            normal.addToEntry(i, i, fixed[i] ? 1 : 1e-12 * (1 + normal.getEntry(i, i)));
        }
        RealMatrix inverse = new LUDecomposition(normal, 1e-300).getSolver().getInverse();
        return IntStream.range(0, p.length).mapToDouble(i -> fixed[i] ? 0 : inverse.getEntry(i, i)).toArray();
    }

    /**
     * The same data with a mode more.
     *
     * @param support whether its share c is one
     */
    ModeFit with(double hz, double q, double c, boolean support) {
        double[] more = Arrays.copyOf(p, p.length + 3);
        boolean[] held = Arrays.copyOf(fixed, p.length + 3);
        more[p.length] = StrictMath.log(hz);
        more[p.length + 1] = StrictMath.log(q);
        more[p.length + 2] = c;
        held[p.length + 2] = support;
        ModeFit next = new ModeFit(f, target, weight, more, held);
        next.centre();
        return next;
    }

    /** Keeps the Q of the last mode as it is. */
    ModeFit holdQ() {
        fixed[fixed.length - 2] = true;
        return this;
    }

    /** Frequency of a reading, Hz. */
    double frequency(int i) {
        return f[i];
    }

    /** ln of the magnitude of a reading. */
    double target(int i) {
        return target[i];
    }

    /** Weight of a reading. */
    double weight(int i) {
        return weight[i];
    }

    /** How many readings. */
    int size() {
        return f.length;
    }

    /** Puts ln G0 where it is best for the rest. */
    private void centre() {
        double[] modes = modes(p);
        double sum = 0;
        double all = 0;
        for (int i = 0; i < f.length; i++) {
            sum += weight[i] * (target[i] - logShape(modes, f[i]));
            all += weight[i];
        }
        p[0] = sum / all;
        ssr = StatUtils.sumSq(at(p));
    }
}
