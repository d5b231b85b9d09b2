package quietband.tolerance;

/** The largest value of curves that are known on a grid, with a parabola through the three points around each maximum. */
final class Peaks {

    private static final double NEAR = 0.8;

    /** Curve, node, place and size of the largest; place is log f. */
    int curve;
    int node;
    double logF;
    double value;

    /**
     * Looks for the largest of several curves of powers.
     *
     * @param x      log f of the nodes, rising
     * @param powers per curve, at least 0
     * @param kink   nodes where a curve may have a corner: no parabola goes across them
     * @param n      number of nodes
     */
    void find(double[] x, double[][] powers, boolean[] kink, int n) {
        value = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < powers.length; k++) {
            double[] p = powers[k];
            for (int i = 0; i < n; i++) {
                if (p[i] > value) {
                    take(k, i, x[i], p[i]);
                }
            }
        }
        double floor = NEAR * value;
        for (int k = 0; k < powers.length; k++) {
            double[] p = powers[k];
            for (int i = 1; i < n - 1; i++) {
                if (p[i] > floor && p[i] >= p[i - 1] && p[i] >= p[i + 1] && !kink[i] && p[i - 1] > 0 && p[i + 1] > 0) {
                    parabola(k, i, x, p);
                }
            }
        }
    }

    private void take(int k, int i, double place, double power) {
        curve = k;
        node = i;
        logF = place;
        value = power;
    }

    private void parabola(int k, int i, double[] x, double[] p) {
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
                take(k, i, x[i] + s, top);
            }
        }
    }
}
