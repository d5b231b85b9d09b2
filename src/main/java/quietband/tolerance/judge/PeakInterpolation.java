package quietband.tolerance.judge;

/**
 * The largest value of curves that are known on a grid: one over the power, which a resonance leaves smooth, by a polynomial in log f
 * through the five points around each maximum (a parabola through three next to the ends and to corners of the curves).
 */
final class PeakInterpolation {

    private static final double NEAR = 0.8;
    /** How much lower than the highest node the next ones may be, and those after them: else the grid steps over what is there. */
    private static final double NEXT = 2;
    private static final double FARTHER = 4;
    /** How far one over the power may fall below that of the highest node, as a share of it: beyond that a polynomial swings. */
    private static final double LEAST = -0.5;

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
                if (p[i] > floor && p[i] >= p[i - 1] && p[i] >= p[i + 1] && !kink[i] && NEXT * p[i - 1] > p[i]
                    && NEXT * p[i + 1] > p[i]) {
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
        double yl = p[i] / p[i - 1] - 1;
        double yr = p[i] / p[i + 1] - 1;
        double s = vertex(left, yl, right, yr);
        if (Double.isNaN(s)) {
            return;
        }
        double y = parabola(s, left, yl, right, yr);
        if (i > 1 && i < n - 2 && !kink[i - 1] && !kink[i + 1] && FARTHER * p[i - 2] > p[i] && FARTHER * p[i + 2] > p[i]) {
            double[] at = {x[i - 2] - x[i], left, 0, right, x[i + 2] - x[i]};
            double[] divided = divided(at, p[i] / p[i - 2] - 1, yl, 0, yr, p[i] / p[i + 2] - 1);
            double reach = Math.min(-left, right) / 8;
            for (int round = 0; round < 2; round++) {
                double here = through(at, divided, s);
                double move = vertex(-reach, through(at, divided, s - reach) - here, reach, through(at, divided, s + reach) - here);
                s = Double.isNaN(move) ? s : Math.max(left, Math.min(right, s + move));
            }
            y = through(at, divided, s);
        }
        double power = p[i] / (1 + y);
        if (y > LEAST && power > value) {
            take(k, i, x, x[i] + s, power, n);
        }
    }

    /** Where the parabola through (0, 0) and two other points is lowest, between them; NaN when it has no bottom. */
    private static double vertex(double left, double yl, double right, double yr) {
        double b = (yl / left - yr / right) / (left - right);
        double a = yl / left - b * left;
        return b > 0 ? Math.max(left, Math.min(right, -a / (2 * b))) : Double.NaN;
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
