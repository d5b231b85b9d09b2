package quietband.numerics;

/** Least squares by Householder reflections, columns scaled by their length; what is left is the point, not the solution. */
public final class HouseholderLeastSquares {

    private static final double LOST = 1e-13;

    private final int rows;
    private final int columns;
    private final double[][] work;
    private final double[] x;
    private final double[] diagonal;

    /** For a size. */
    public HouseholderLeastSquares(int rows, int columns) {
        this.rows = rows;
        this.columns = columns;
        this.work = new double[columns + 1][rows];
        this.x = new double[columns];
        this.diagonal = new double[columns];
    }

    /** The solution of the last call (length columns); not copied. */
    public double[] solution() {
        return x;
    }

    /**
     * Writes b - A x with the least length.
     *
     * @param a    by column; not modified
     * @param b    not modified
     * @param rest modified
     */
    public void run(double[][] a, double[] b, double[] rest) {
        double[] scale = new double[columns];
        for (int k = 0; k < columns; k++) {
            double sum = 0;
            for (double v : a[k]) {
                sum += v * v;
            }
            scale[k] = sum > 0 ? 1 / Math.sqrt(sum) : 0;
            for (int i = 0; i < rows; i++) {
                work[k][i] = a[k][i] * scale[k];
            }
        }
        System.arraycopy(b, 0, work[columns], 0, rows);
        for (int k = 0; k < columns; k++) {
            diagonal[k] = reflect(work, k, LOST);
        }
        for (int k = columns - 1; k >= 0; k--) {
            double sum = work[columns][k];
            for (int m = k + 1; m < columns; m++) {
                sum -= work[m][k] * x[m];
            }
            x[k] = Math.abs(diagonal[k]) > LOST ? sum / diagonal[k] : 0;
        }
        System.arraycopy(b, 0, rest, 0, rows);
        for (int k = 0; k < columns; k++) {
            x[k] *= scale[k];
            double c = x[k];
            double[] column = a[k];
            for (int i = 0; i < rows; i++) {
                rest[i] -= c * column[i];
            }
        }
    }

    /**
     * Turns what stands below the diagonal of a column to 0 by a reflection, with all columns behind it.
     *
     * @param columns of one length; modified from k on
     * @param least   a column that is no longer than this stays
     * @return the diagonal
     */
    public static double reflect(double[][] columns, int k, double least) {
        double[] v = columns[k];
        double sum = 0;
        for (int i = k; i < v.length; i++) {
            sum += v[i] * v[i];
        }
        double alpha = v[k] > 0 ? -Math.sqrt(sum) : Math.sqrt(sum);
        if (Math.abs(alpha) <= least) {
            return alpha;
        }
        v[k] -= alpha;
        double scale = -1 / (alpha * v[k]);
        for (int j = k + 1; j < columns.length; j++) {
            double[] to = columns[j];
            double dot = 0;
            for (int i = k; i < v.length; i++) {
                dot += v[i] * to[i];
            }
            dot *= scale;
            for (int i = k; i < v.length; i++) {
                to[i] -= dot * v[i];
            }
        }
        return alpha;
    }
}
