package quietband.identification.shaker;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Least squares of ln|G(f)| to ln G0 + ln|1 + sum_k c_k r_k^2/(1 - r_k^2 + j r_k/Q_k)|, r_k = f/f_k: a resonator on modes of its
 * support and fixture. c = 1 is a blank of mass on an elastic support, which gives (1 + j r/Q)/(1 - r^2 + j r/Q).
 * Parameters: ln G0, then per mode ln f_k, ln Q_k, c_k.
 */
final class ModeFit {

    private static final int STEPS = 60;

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
        this.ssr = ssr(p);
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
        int n = 0;
        for (boolean b : fixed) {
            n += b ? 0 : 1;
        }
        return n;
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
            double d = r / modes[k + 1];
            double a = 1 - r * r;
            double scale = modes[k + 2] * r * r / (a * a + d * d);
            re += scale * a;
            im -= scale * d;
        }
        return new double[] {re, im};
    }

    /** ln of the magnitude of {@link #response}. */
    static double logShape(double[] modes, double f) {
        double[] h = response(modes, f);
        return 0.5 * StrictMath.log(h[0] * h[0] + h[1] * h[1] + 1e-300);
    }

    private double ssr(double[] q) {
        double[] modes = modes(q);
        double sum = 0;
        for (int i = 0; i < f.length; i++) {
            double d = target[i] - q[0] - logShape(modes, f[i]);
            sum += weight[i] * d * d;
        }
        return sum;
    }

    /** Levenberg and Marquardt's method from where it stands. */
    ModeFit refine() {
        double damping = 1e-3;
        for (int step = 0; step < STEPS && damping < 1e10; step++) {
            RealMatrix j = jacobian();
            RealMatrix normal = normal(j);
            double[] slope = slope(j);
            for (int i = 0; i < p.length; i++) {
                normal.setEntry(i, i, normal.getEntry(i, i) * (1 + damping) + 1e-12);
            }
            double[] move = new LUDecomposition(normal, 1e-300).getSolver().solve(new ArrayRealVector(slope, false)).toArray();
            double[] next = p.clone();
            for (int i = 0; i < p.length; i++) {
                next[i] += Math.max(-0.3, Math.min(0.3, move[i]));
            }
            double other = ssr(next);
            if (other < ssr) {
                boolean done = ssr - other < 1e-12 * ssr;
                p = next;
                ssr = other;
                damping = Math.max(1e-9, damping / 5);
                if (done) {
                    break;
                }
            } else {
                damping *= 6;
            }
        }
        return this;
    }

    private RealMatrix jacobian() {
        RealMatrix j = new Array2DRowRealMatrix(f.length, p.length);
        double h = 1e-6;
        for (int c = 0; c < p.length; c++) {
            if (fixed[c]) {
                continue;
            }
            double[] up = p.clone();
            double[] down = p.clone();
            up[c] += h;
            down[c] -= h;
            double[] above = modes(up);
            double[] below = modes(down);
            for (int i = 0; i < f.length; i++) {
                j.setEntry(i, c, c == 0 ? 1 : (logShape(above, f[i]) - logShape(below, f[i])) / (2 * h));
            }
        }
        return j;
    }

    private RealMatrix normal(RealMatrix j) {
        RealMatrix w = j.copy();
        for (int i = 0; i < f.length; i++) {
            for (int c = 0; c < p.length; c++) {
                w.multiplyEntry(i, c, weight[i]);
            }
        }
        return j.transposeMultiply(w);
    }

    private double[] slope(RealMatrix j) {
        double[] residual = new double[f.length];
        double[] modes = modes(p);
        for (int i = 0; i < f.length; i++) {
            residual[i] = weight[i] * (target[i] - p[0] - logShape(modes, f[i]));
        }
        return j.transpose().operate(residual);
    }

    /** Variances of the parameters for deviations of weight one with variance one; 0 where fixed. */
    double[] variances() {
        RealMatrix normal = normal(jacobian());
        for (int i = 0; i < p.length; i++) {
            normal.addToEntry(i, i, fixed[i] ? 1 : 1e-12 * (1 + normal.getEntry(i, i)));
        }
        RealMatrix inverse = new LUDecomposition(normal, 1e-300).getSolver().getInverse();
        double[] v = new double[p.length];
        for (int i = 0; i < p.length; i++) {
            v[i] = fixed[i] ? 0 : inverse.getEntry(i, i);
        }
        return v;
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
        ssr = ssr(p);
    }
}
