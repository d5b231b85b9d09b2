package quietband.numerics;

/**
 * {@code |A x + b| <= c'x + d} on some of the unknowns, stored as s = bound - G x with s in the cone: row 0 of G is
 * -c, the rest is -A; bound is (d, b). One row alone is a linear bound.
 *
 * @param index which unknowns, rising
 * @param g     rows of G over these unknowns; kept
 * @param bound as many as rows; kept
 */
public record SecondOrderCone(int[] index, double[][] g, double[] bound) {

    void addTransposed(double[] z, double[] into) {
        for (int r = 0; r < g.length; r++) {
            double[] row = g[r];
            double zr = z[r];
            if (zr != 0) {
                for (int k = 0; k < row.length; k++) {
                    into[index[k]] += row[k] * zr;
                }
            }
        }
    }

    void apply(double[] x, double[] into) {
        for (int r = 0; r < g.length; r++) {
            double[] row = g[r];
            double sum = 0;
            for (int k = 0; k < row.length; k++) {
                sum += row[k] * x[index[k]];
            }
            into[r] = sum;
        }
    }
}
