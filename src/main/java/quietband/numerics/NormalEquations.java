package quietband.numerics;

/**
 * A sum of squares of many rows, |A x - b|^2, kept as the products of its columns. Columns may differ in size by many
 * orders; each is scaled by its own length before anything is solved.
 */
public final class NormalEquations {

    private static final int BATCH = 6;

    private final int n;
    private final double[] m;
    private final int[] all;
    private final double[][] batch;
    private int filled;

    /** For so many unknowns. */
    public NormalEquations(int unknowns) {
        n = unknowns + 1;
        m = new double[n * n];
        batch = new double[BATCH][n];
        all = new int[n];
        for (int i = 0; i < n; i++) {
            all[i] = i;
        }
    }

    /** Adds one row, its right side behind it: read up to n unknowns and one; copied. */
    public void add(double[] row, double right) {
        System.arraycopy(row, 0, batch[filled], 0, n - 1);
        batch[filled][n - 1] = right;
        if (++filled == BATCH) {
            SquareSum.add(batch, all, m, n);
            filled = 0;
        }
    }

    private void flush() {
        for (int r = filled; r < BATCH; r++) {
            java.util.Arrays.fill(batch[r], 0);
        }
        if (filled > 0) {
            SquareSum.add(batch, all, m, n);
            filled = 0;
        }
    }

    /** |b|^2. */
    public double right() {
        flush();
        return m[n * n - 1];
    }

    /** Root of the sum of squares at an x. */
    public double norm(double[] x) {
        flush();
        double sum = m[n * n - 1];
        for (int i = 0; i < n - 1; i++) {
            sum -= 2 * m[(n - 1) * n + i] * x[i];
            for (int j = 0; j < i; j++) {
                sum += 2 * m[i * n + j] * x[i] * x[j];
            }
            sum += m[i * n + i] * x[i] * x[i];
        }
        return Math.sqrt(Math.max(0, sum));
    }

    /**
     * Factor with |A x - b|^2 = |R x - c|^2 + rest: rows of (R, c), upper triangular; a row a column spoils is 0.
     */
    public double[][] factor() {
        flush();
        double[] d = scales();
        double[] l = new double[n * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                l[i * n + j] = m[i * n + j] / (d[i] * d[j]);
            }
        }
        Cholesky.factor(l, n);
        double[][] r = new double[n - 1][n];
        for (int k = 0; k < n - 1; k++) {
            if (Double.isFinite(l[k * n + k])) {
                for (int i = k; i < n; i++) {
                    r[k][i] = l[i * n + k] * d[i];
                }
            }
        }
        return r;
    }

    private double[] scales() {
        double[] d = new double[n];
        for (int i = 0; i < n; i++) {
            d[i] = m[i * n + i] > 0 ? Math.sqrt(m[i * n + i]) : 1;
        }
        return d;
    }

    /** The x with the least |A x - b|^2 + weight |x|^2. */
    public double[] least(double weight) {
        flush();
        double[] d = new double[n - 1];
        for (int i = 0; i < n - 1; i++) {
            double own = m[i * n + i] + weight;
            d[i] = own > 0 ? Math.sqrt(own) : 1;
        }
        double[] l = new double[(n - 1) * (n - 1)];
        for (int i = 0; i < n - 1; i++) {
            for (int j = 0; j <= i; j++) {
                l[i * (n - 1) + j] = (m[i * n + j] + (i == j ? weight : 0)) / (d[i] * d[j]);
            }
        }
        Cholesky.factor(l, n - 1);
        double[] x = new double[n - 1];
        for (int i = 0; i < n - 1; i++) {
            x[i] = m[(n - 1) * n + i] / d[i];
        }
        Cholesky.solve(l, n - 1, x);
        for (int i = 0; i < n - 1; i++) {
            x[i] /= d[i];
        }
        return x;
    }
}
