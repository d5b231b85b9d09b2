package quietband.numerics;

import java.util.List;

/**
 * One cone's slack s, multiplier z and their Nesterov-Todd scaling W = beta (2 v v' - J) on the way of {@link ConeProgram}.
 * J is 1 for the first component and -1 for the others.
 */
final class ConeState {

    private final SecondOrderCone cone;
    private final int m;
    private final double[] s;
    private final double[] z;
    private final double[] rz;
    private final double[] lambda;
    private final double[] v;
    private final double[] right;
    private final double[] complement;
    private final double[] ds;
    private final double[] dz;
    private final double[] work;
    private final double[][] scaled;
    private double beta = 1;

    ConeState(SecondOrderCone cone) {
        this.cone = cone;
        m = cone.bound().length;
        s = new double[m];
        z = new double[m];
        rz = new double[m];
        lambda = new double[m];
        v = new double[m];
        v[0] = 1;
        right = new double[m];
        complement = new double[m];
        ds = new double[m];
        dz = new double[m];
        work = new double[m];
        scaled = new double[m][cone.index().length];
    }

    SecondOrderCone cone() {
        return cone;
    }

    /** Adds G' z. */
    void addMultiplier(double[] into) {
        cone.addTransposed(z, into);
    }

    /** s = bound - G x and z = -s, neither in its cone yet. */
    void start(double[] x) {
        cone.apply(x, work);
        for (int r = 0; r < m; r++) {
            s[r] = cone.bound()[r] - work[r];
            z[r] = -s[r];
        }
    }

    /** Moves all slacks and multipliers into their cones. */
    static void centre(List<ConeState> states) {
        double outS = Double.NEGATIVE_INFINITY;
        double outZ = Double.NEGATIVE_INFINITY;
        for (ConeState a : states) {
            outS = Math.max(outS, tail(a.s) - a.s[0]);
            outZ = Math.max(outZ, tail(a.z) - a.z[0]);
        }
        for (ConeState a : states) {
            a.s[0] += outS >= -1e-8 ? 1 + outS : 0;
            a.z[0] += outZ >= -1e-8 ? 1 + outZ : 0;
        }
    }

    private static double tail(double[] a) {
        double sum = 0;
        for (int r = 1; r < a.length; r++) {
            sum += a[r] * a[r];
        }
        return Math.sqrt(sum);
    }

    /** a'Ja by a product, which does not cancel. */
    private static double jnorm(double[] a) {
        double t = tail(a);
        return Math.sqrt(Math.max((a[0] - t) * (a[0] + t), Double.MIN_NORMAL));
    }

    void residual(double[] x) {
        cone.apply(x, rz);
        for (int r = 0; r < m; r++) {
            rz[r] += s[r] - cone.bound()[r];
        }
    }

    double infeasibility() {
        double sum = 0;
        double size = 1;
        for (int r = 0; r < m; r++) {
            sum += rz[r] * rz[r];
            size = Math.max(size, Math.abs(cone.bound()[r]));
        }
        return Math.sqrt(sum) / size;
    }

    double gap() {
        double sum = 0;
        for (int r = 0; r < m; r++) {
            sum += s[r] * z[r];
        }
        return sum;
    }

    /** Nesterov-Todd: W z = W^-1 s = lambda, W = beta (2 v v' - J). */
    void scale() {
        double ns = jnorm(s);
        double nz = jnorm(z);
        beta = Math.sqrt(ns / nz);
        double dot = 0;
        for (int r = 0; r < m; r++) {
            dot += s[r] / ns * (z[r] / nz);
        }
        double gamma = Math.sqrt((1 + dot) / 2);
        for (int r = 0; r < m; r++) {
            v[r] = (s[r] / ns + (r == 0 ? 1 : -1) * z[r] / nz) / (2 * gamma);
        }
        double down = Math.sqrt(2 * (v[0] + 1));
        v[0] += 1;
        for (int r = 0; r < m; r++) {
            v[r] /= down;
        }
        times(z, lambda);
    }

    /** W a. */
    private void times(double[] a, double[] into) {
        double dot = 0;
        for (int r = 0; r < m; r++) {
            dot += v[r] * a[r];
        }
        for (int r = 0; r < m; r++) {
            into[r] = beta * (2 * v[r] * dot - (r == 0 ? a[r] : -a[r]));
        }
    }

    /** W^-1 a. */
    private void divide(double[] a, double[] into) {
        double dot = 0;
        for (int r = 0; r < m; r++) {
            dot += (r == 0 ? v[r] : -v[r]) * a[r];
        }
        for (int r = 0; r < m; r++) {
            double jv = r == 0 ? v[r] : -v[r];
            into[r] = (2 * jv * dot - (r == 0 ? a[r] : -a[r])) / beta;
        }
    }

    void addTo(double[] h, int n) {
        int k = cone.index().length;
        double[] dot = new double[k];
        for (int r = 0; r < m; r++) {
            double jv = r == 0 ? v[r] : -v[r];
            double[] row = cone.g()[r];
            for (int i = 0; i < k; i++) {
                dot[i] += jv * row[i];
            }
        }
        for (int r = 0; r < m; r++) {
            double jv = 2 * (r == 0 ? v[r] : -v[r]) / beta;
            double one = (r == 0 ? 1 : -1) / beta;
            double[] row = cone.g()[r];
            double[] out = scaled[r];
            for (int i = 0; i < k; i++) {
                out[i] = jv * dot[i] - one * row[i];
            }
        }
        SquareSum.add(scaled, cone.index(), h, n);
    }

    /** Right side of the predictor: complement = lambda, from lambda \ (lambda o lambda). */
    void affine() {
        System.arraycopy(lambda, 0, complement, 0, m);
        rightSide();
    }

    /** complement = lambda \ (lambda o lambda + (W^-1 ds) o (W dz) - mu e). */
    void corrected(double mu) {
        double[] a = new double[m];
        double[] b = new double[m];
        divide(ds, a);
        times(dz, b);
        double[] rhs = new double[m];
        circle(lambda, lambda, rhs);
        double[] second = new double[m];
        circle(a, b, second);
        for (int r = 0; r < m; r++) {
            rhs[r] += second[r];
        }
        rhs[0] -= mu;
        under(rhs, complement);
        rightSide();
    }

    /** right = -rz + W complement: what dz answers to. */
    private void rightSide() {
        times(complement, right);
        for (int r = 0; r < m; r++) {
            right[r] -= rz[r];
        }
    }

    /** Adds G' W^-2 right. */
    void addRight(double[] dx) {
        divide(right, work);
        double[] twice = new double[m];
        divide(work, twice);
        cone.addTransposed(twice, dx);
    }

    /** dz = W^-2 (G dx - right), ds = -rz - G dx. */
    void direction(double[] dx) {
        cone.apply(dx, work);
        for (int r = 0; r < m; r++) {
            ds[r] = -rz[r] - work[r];
            work[r] -= right[r];
        }
        double[] once = new double[m];
        divide(work, once);
        divide(once, dz);
    }

    double longest() {
        return Math.min(longest(s, ds), longest(z, dz));
    }

    /** Largest step that keeps a + t d in the cone; 1e3 when any does. */
    private static double longest(double[] a, double[] d) {
        double na = jnorm(a);
        double dot = a[0] / na * d[0];
        for (int r = 1; r < a.length; r++) {
            dot -= a[r] / na * d[r];
        }
        // d in the frame where a is na times the centre
        double first = dot / na;
        double factor = (first + d[0] / na) / (a[0] / na + 1);
        double sum = 0;
        for (int r = 1; r < a.length; r++) {
            double t = d[r] / na - factor * a[r] / na;
            sum += t * t;
        }
        double worst = Math.sqrt(sum) - first;
        return worst <= 1e-3 ? 1e3 : 1 / worst;
    }

    private static void circle(double[] a, double[] b, double[] into) {
        double dot = 0;
        for (int r = 0; r < a.length; r++) {
            dot += a[r] * b[r];
            into[r] = a[0] * b[r] + b[0] * a[r];
        }
        into[0] = dot;
    }

    /** The a with lambda o a = b. */
    private void under(double[] b, double[] into) {
        double t = tail(lambda);
        double det = (lambda[0] - t) * (lambda[0] + t);
        double dot = 0;
        for (int r = 1; r < m; r++) {
            dot += lambda[r] * b[r];
        }
        into[0] = (lambda[0] * b[0] - dot) / det;
        for (int r = 1; r < m; r++) {
            into[r] = (b[r] - lambda[r] * into[0]) / lambda[0];
        }
    }

    void step(double t) {
        for (int r = 0; r < m; r++) {
            s[r] += t * ds[r];
            z[r] += t * dz[r];
        }
    }
}
