package quietband.numerics;

/** Symmetric positive definite equations in place; a pivot that rounding spoils is taken as infinite (its unknown 0). */
public final class Cholesky {

    private static final double LOST = 1e-15;

    private Cholesky() { }

    /** Replaces the lower triangle of a matrix (row by row, n x n) by its factor L, L L' = A. */
    public static void factor(double[] a, int n) {
        for (int i = 0; i < n; i++) {
            double diagonal = a[i * n + i];
            for (int j = 0; j <= i; j++) {
                double sum = a[i * n + j];
                int ri = i * n;
                int rj = j * n;
                double s0 = 0;
                double s1 = 0;
                double s2 = 0;
                double s3 = 0;
                int k = 0;
                for (; k + 3 < j; k += 4) {
                    s0 += a[ri + k] * a[rj + k];
                    s1 += a[ri + k + 1] * a[rj + k + 1];
                    s2 += a[ri + k + 2] * a[rj + k + 2];
                    s3 += a[ri + k + 3] * a[rj + k + 3];
                }
                for (; k < j; k++) {
                    s0 += a[ri + k] * a[rj + k];
                }
                sum -= s0 + s1 + (s2 + s3);
                if (i == j) {
                    a[ri + i] = sum > LOST * diagonal ? Math.sqrt(sum) : Double.POSITIVE_INFINITY;
                } else {
                    a[ri + j] = sum / a[rj + j];
                }
            }
        }
    }

    /** Solves L L' x = b in place. */
    public static void solve(double[] l, int n, double[] b) {
        for (int i = 0; i < n; i++) {
            double sum = b[i];
            for (int k = 0; k < i; k++) {
                sum -= l[i * n + k] * b[k];
            }
            b[i] = sum / l[i * n + i];
        }
        for (int i = n - 1; i >= 0; i--) {
            double x = b[i] / l[i * n + i];
            b[i] = x;
            for (int k = 0; k < i; k++) {
                b[k] -= l[i * n + k] * x;
            }
        }
    }
}
