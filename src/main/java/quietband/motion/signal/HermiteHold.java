package quietband.motion.signal;

import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * The exact step of x' = F x + G u over a time h when u is the cubic through the values and slopes at both ends:
 * x(h) = Phi x(0) + A u(0) + B h u'(0) + C u(h) + D h u'(h). Source of the method:
 * C. F. Van Loan, IEEE Trans. Automatic Control 23 (1978) 395 (from memory): the input's own equations are joined to the
 * system's and one matrix exponential of both is taken.
 *
 * @param phi   n x n
 * @param input n x 4 m: the columns of A, B, C and D for the first input, then those for the next
 */
public record HermiteHold(double[][] phi, double[][] input) {

    /** For a system and a step in s, above 0. */
    public static HermiteHold of(double[][] f, double[][] g, double h) {
        int n = f.length;
        int m = n == 0 ? 0 : g[0].length;
        if (n == 0) {
            return new HermiteHold(new double[0][], new double[0][]);
        }
        RealMatrix joined = MatrixUtils.createRealMatrix(n + 4 * m, n + 4 * m);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                joined.setEntry(i, j, f[i][j] * h);
            }
            for (int j = 0; j < m; j++) {
                joined.setEntry(i, n + j, g[i][j] * h);
            }
        }
        for (int j = 0; j < 3 * m; j++) {
            joined.setEntry(n + j, n + m + j, 1);
        }
        double[][] e = MatrixUtils.matrixExponential(joined).getData();
        double[][] phi = new double[n][n];
        double[][] input = new double[n][4 * m];
        for (int i = 0; i < n; i++) {
            System.arraycopy(e[i], 0, phi[i], 0, n);
            for (int j = 0; j < m; j++) {
                // responses to 1, s, s^2/2, s^3/6 with s = t/h from 0 to 1
                double one = e[i][n + j];
                double s = e[i][n + m + j];
                double s2 = e[i][n + 2 * m + j];
                double s3 = e[i][n + 3 * m + j];
                input[i][4 * j] = one - 6 * s2 + 12 * s3;
                input[i][4 * j + 1] = s - 4 * s2 + 6 * s3;
                input[i][4 * j + 2] = 6 * s2 - 12 * s3;
                input[i][4 * j + 3] = -2 * s2 + 6 * s3;
            }
        }
        return new HermiteHold(phi, input);
    }
}
