package quietband.tolerance;

/**
 * The largest value of curves that are known on a grid, on log-log scales with a polynomial through the five points around each maximum
 * (a parabola through three next to the ends and to corners of the curves).
 */
final class Peaks {

    private static final double NEAR = 0.8;

    /** Curve, node, place and size of the largest; place is log f. */
    int curve;
    int node;
    double logF;
    double value;
    private double left;
    private double right;

    /** Forgets what was found. */
    void clear() {
        value = Double.NEGATIVE_INFINITY;
    }

    /**
     * Looks whether several curves of powers have something larger than was found before.
     *
     * @param x      log f of the nodes, rising
     * @param powers per curve, at least 0
     * @param kink   nodes where a curve may have a corner: no polynomial goes across them
     * @param n      number of nodes
     */
    void find(double[] x, double[][] powers, boolean[] kink, int n) {
        for (int k = 0; k < powers.length; k++) {
            double[] p = powers[k];
            for (int i = 0; i < n; i++) {
                if (p[i] > value) {
                    take(k, i, x, x[i], p[i], n);
                }
            }
        }
        double floor = NEAR * value;
        for (int k = 0; k < powers.length; k++) {
            double[] p = powers[k];
            for (int i = 1; i < n - 1; i++) {
                if (p[i] > floor && p[i] >= p[i - 1] && p[i] >= p[i + 1] && !kink[i] && p[i - 1] > 0 && p[i + 1] > 0) {
                    top(k, i, x, p, kink, n);
                }
            }
        }
    }

    private void take(int k, int i, double[] x, double place, double power, int n) {
        left = x[Math.max(0, i - 1)];
        right = x[Math.min(n - 1, i + 1)];
        curve = k;
        node = i;
        logF = place;
        value = power;
    }

    private void top(int k, int i, double[] x, double[] p, boolean[] kink, int n) {
        double left = x[i - 1] - x[i];
        double right = x[i + 1] - x[i];
        double yl = StrictMath.log(p[i - 1] / p[i]);
        double yr = StrictMath.log(p[i + 1] / p[i]);
        double s = vertex(left, yl, right, yr);
        if (Double.isNaN(s)) {
            return;
        }
        double y = parabola(s, left, yl, right, yr);
        if (i > 1 && i < n - 2 && !kink[i - 1] && !kink[i + 1] && p[i - 2] > 0 && p[i + 2] > 0) {
            double[] at = {x[i - 2] - x[i], left, 0, right, x[i + 2] - x[i]};
            double[] log = divided(at, StrictMath.log(p[i - 2] / p[i]), yl, 0, yr, StrictMath.log(p[i + 2] / p[i]));
            double reach = Math.min(-left, right) / 8;
            for (int round = 0; round < 2; round++) {
                double here = through(at, log, s);
                double move = vertex(-reach, through(at, log, s - reach) - here, reach, through(at, log, s + reach) - here);
                s = Double.isNaN(move) ? s : Math.max(left, Math.min(right, s + move));
            }
            y = through(at, log, s);
        }
        double power = p[i] * StrictMath.exp(y);
        if (power > value) {
            take(k, i, x, x[i] + s, power, n);
        }
    }

    /** Where the parabola through (0, 0) and two other points is highest, between them; NaN when it has no top. */
    private static double vertex(double left, double yl, double right, double yr) {
        double b = (yl / left - yr / right) / (left - right);
        double a = yl / left - b * left;
        return b < 0 ? Math.max(left, Math.min(right, -a / (2 * b))) : Double.NaN;
    }

    private static double parabola(double s, double left, double yl, double right, double yr) {
        double b = (yl / left - yr / right) / (left - right);
        return s * (yl / left - b * left + b * s);
    }

    /** Divided differences of values: the coefficients of Newton's polynomial through them. */
    private static double[] divided(double[] x, double... y) {
        for (int step = 1; step < y.length; step++) {
            for (int i = y.length - 1; i >= step; i--) {
                y[i] = (y[i] - y[i - 1]) / (x[i] - x[i - step]);
            }
        }
        return y;
    }

    /** Newton's polynomial at a place. */
    private static double through(double[] x, double[] divided, double at) {
        double y = divided[divided.length - 1];
        for (int i = divided.length - 2; i >= 0; i--) {
            y = y * (at - x[i]) + divided[i];
        }
        return y;
    }

    /** Frequency of the node before the largest, Hz. */
    double leftHz() {
        return StrictMath.exp(left);
    }

    /** Frequency of the largest, Hz. */
    double atHz() {
        return StrictMath.exp(logF);
    }

    /** Frequency of the node after the largest, Hz. */
    double rightHz() {
        return StrictMath.exp(right);
    }
}
