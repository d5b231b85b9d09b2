package quietband.tolerance;

/** The largest value of curves that are known on a grid, with a parabola through the three points around each maximum. */
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
     * @param kink   nodes where a curve may have a corner: no parabola goes across them
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
                    parabola(k, i, x, p, n);
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

    private void parabola(int k, int i, double[] x, double[] p, int n) {
        double left = x[i - 1] - x[i];
        double right = x[i + 1] - x[i];
        double yl = StrictMath.log(p[i - 1] / p[i]);
        double yr = StrictMath.log(p[i + 1] / p[i]);
        // y = a s + b s^2 through both neighbours
        double b = (yl / left - yr / right) / (left - right);
        double a = yl / left - b * left;
        if (b < 0) {
            double s = Math.max(left, Math.min(right, -a / (2 * b)));
            double top = p[i] * StrictMath.exp(s * (a + b * s));
            if (top > value) {
                take(k, i, x, x[i] + s, top, n);
            }
        }
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
