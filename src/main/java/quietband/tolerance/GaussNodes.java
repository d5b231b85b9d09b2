package quietband.tolerance;

/** Nodes and weights of Gauss-Legendre quadrature on [-1, 1], by Newton's method on the Legendre recurrence. */
final class GaussNodes {

    final double[] x;
    final double[] w;

    GaussNodes(int n) {
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
