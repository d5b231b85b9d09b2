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
        this.work = new double[columns][rows];
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
        System.arraycopy(b, 0, rest, 0, rows);
        for (int k = 0; k < columns; k++) {
            reflect(k, rest);
        }
        for (int k = columns - 1; k >= 0; k--) {
            double sum = rest[k];
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

    private void reflect(int k, double[] right) {
        double[] v = work[k];
        double sum = 0;
        for (int i = k; i < rows; i++) {
            sum += v[i] * v[i];
        }
        double alpha = v[k] > 0 ? -Math.sqrt(sum) : Math.sqrt(sum);
        diagonal[k] = alpha;
        if (Math.abs(alpha) <= LOST) {
            return;
        }
        v[k] -= alpha;
        double scale = -1 / (alpha * v[k]);
        for (int j = k + 1; j < columns; j++) {
            apply(v, scale, k, work[j]);
        }
        apply(v, scale, k, right);
    }

    private void apply(double[] v, double scale, int from, double[] to) {
        double dot = 0;
        for (int i = from; i < rows; i++) {
            dot += v[i] * to[i];
        }
        dot *= scale;
        for (int i = from; i < rows; i++) {
            to[i] -= dot * v[i];
        }
    }
}
