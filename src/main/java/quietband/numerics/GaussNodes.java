package quietband.numerics;

/**
 * How a normal density is integrated: Gauss-Legendre on [-1, 1], nodes and weights by Newton's method on the Legendre
 * recurrence, over a number of standard deviations each way.
 */
public final class GaussNodes {

    /** For a law: what is cut off and what is missed stay below 1e-11. */
    public static final GaussNodes FINE = new GaussNodes(40, 7.5);
    /** For one unit among many: a few millionths. */
    public static final GaussNodes QUICK = new GaussNodes(15, 5.2);

    public final double[] x;
    public final double[] w;
    public final double far;

    private GaussNodes(int n, double far) {
        this.far = far;
        x = new double[n];
        w = new double[n];
        for (int i = 0; i < n; i++) {
            double z = StrictMath.cos(Math.PI * (i + 0.75) / (n + 0.5));
            double slope = 1;
            for (int step = 0; step < 12; step++) {
                double p = 1;
                double before = 0;
                for (int k = 1; k <= n; k++) {
                    double next = ((2 * k - 1) * z * p - (k - 1) * before) / k;
                    before = p;
                    p = next;
                }
                slope = n * (z * p - before) / (z * z - 1);
                z -= p / slope;
            }
            x[i] = z;
            w[i] = 2 / ((1 - z * z) * slope * slope);
        }
    }
}
