package quietband.numerics;

/**
 * The exponential of a small matrix in plain arrays, by its series: the matrix is halved until its rows sum up to a half or less, and
 * the result squared as often. A few of them decide how long a short run takes.
 */
public final class MatrixExponential {

    private static final double SMALL = 0.5;
    // 0.5^14/14! is below 1e-15
    private static final int TERMS = 14;

    private MatrixExponential() { }

    /** exp(a) of a square matrix of finite numbers, row by row; a is left as it is. */
    public static double[][] of(double[][] a) {
        int n = a.length;
        double norm = 0;
        for (double[] row : a) {
            double sum = 0;
            for (double v : row) {
                sum += Math.abs(v);
            }
            norm = Math.max(norm, sum);
        }
        int halvings = 0;
        double scale = 1;
        while (norm * scale > SMALL) {
            scale /= 2;
            halvings++;
        }
        double[][] part = new double[n][n];
        double[][] result = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                part[i][j] = a[i][j] * scale;
            }
            result[i][i] = 1;
        }
        // Horner's rule: 1 + x (1 + x/2 (1 + x/3 ( ... )))
        for (int k = TERMS; k >= 1; k--) {
            result = product(part, result, 1.0 / k);
            for (int i = 0; i < n; i++) {
                result[i][i]++;
            }
        }
        for (int k = 0; k < halvings; k++) {
            result = product(result, result, 1);
        }
        return result;
    }

    private static double[][] product(double[][] x, double[][] y, double scale) {
        double[][] z = new double[x.length][x.length];
        for (int i = 0; i < x.length; i++) {
            for (int k = 0; k < x.length; k++) {
                double v = x[i][k] * scale;
                if (v != 0) {
                    add(z[i], v, y[k]);
                }
            }
        }
        return z;
    }

    private static void add(double[] z, double v, double[] y) {
        for (int j = 0; j < z.length; j++) {
            z[j] += v * y[j];
        }
    }
}
