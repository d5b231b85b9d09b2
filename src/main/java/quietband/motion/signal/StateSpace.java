package quietband.motion.signal;

/**
 * Linear equations x' = f x + g u, y = c x + d u; rows of plain arrays, not copied. States n, inputs m, outputs p: f is
 * n x n, g n x m, c p x n, d p x m.
 */
public record StateSpace(double[][] f, double[][] g, double[][] c, double[][] d) {

    int states() {
        return f.length;
    }

    int inputs() {
        return d.length == 0 ? g[0].length : d[0].length;
    }

    /** What the slope of each output per step of h takes of the states. */
    public double[][] slopes(double h) {
        return scaled(f, states(), h);
    }

    /** What the slope of each output per step of h takes of the inputs' values. */
    public double[][] slopesOfInput(double h) {
        return scaled(g, inputs(), h);
    }

    private double[][] scaled(double[][] matrix, int columns, double h) {
        double[][] rows = new double[c.length][];
        for (int p = 0; p < c.length; p++) {
            rows[p] = rowTimes(c[p], matrix, columns);
            for (int j = 0; j < columns; j++) {
                rows[p][j] *= h;
            }
        }
        return rows;
    }

    /** Row p of c times a matrix (n columns of rows): the product as a fresh row. */
    public static double[] rowTimes(double[] row, double[][] matrix, int columns) {
        double[] product = new double[columns];
        for (int i = 0; i < row.length; i++) {
            double r = row[i];
            if (r != 0) {
                for (int j = 0; j < columns; j++) {
                    product[j] += r * matrix[i][j];
                }
            }
        }
        return product;
    }
}
