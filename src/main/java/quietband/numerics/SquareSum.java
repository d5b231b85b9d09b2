package quietband.numerics;

/** Sums of squares of rows, the work that fitting spends its time on. */
final class SquareSum {

    private SquareSum() { }

    /**
     * Adds rows' products to the lower triangle of a square matrix: h[index_i][index_j] += sum_r rows[r][i] rows[r][j].
     *
     * @param index unknown of each column, rising
     * @param h     n x n, row by row; modified
     */
    static void add(double[][] rows, int[] index, double[] h, int n) {
        int k = index.length;
        int r = 0;
        for (; r + 2 < rows.length; r += 3) {
            double[] a = rows[r];
            double[] b = rows[r + 1];
            double[] c = rows[r + 2];
            for (int i = 0; i < k; i++) {
                double ai = a[i];
                double bi = b[i];
                double ci = c[i];
                if (ai == 0 && bi == 0 && ci == 0) {
                    continue;
                }
                int first = index[0];
                int at = index[i] * n;
                if (index[i] - first == i) {
                    // unknowns that follow one another: a loop the compiler turns into vectors
                    int base = at + first;
                    for (int j = 0; j <= i; j++) {
                        h[base + j] += ai * a[j] + bi * b[j] + ci * c[j];
                    }
                } else {
                    for (int j = 0; j <= i; j++) {
                        h[at + index[j]] += ai * a[j] + bi * b[j] + ci * c[j];
                    }
                }
            }
        }
        for (; r < rows.length; r++) {
            double[] a = rows[r];
            for (int i = 0; i < k; i++) {
                int at = index[i] * n;
                for (int j = 0; j <= i; j++) {
                    h[at + index[j]] += a[i] * a[j];
                }
            }
        }
    }
}
