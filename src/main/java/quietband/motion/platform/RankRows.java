package quietband.motion.platform;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;

/** Splits a symmetric matrix of no negative eigenvalue into as few rows as it has rank: S = sum row^T row. */
final class RankRows {

    private static final double NOTHING = 1e-13;

    private RankRows() { }

    /**
     * The rows (length 6).
     *
     * @param s    6 x 6 row by row
     * @param mass 6 x 6 row by row; its diagonal scales translations and rotations alike
     */
    static List<double[]> of(double[] s, double[] mass) {
        double[][] scaled = new double[6][6];
        double[] root = new double[6];
        for (int i = 0; i < 6; i++) {
            root[i] = Math.sqrt(mass[7 * i]);
        }
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                scaled[i][j] = (s[6 * i + j] + s[6 * j + i]) / (2 * root[i] * root[j]);
            }
        }
        EigenDecompositionSymmetric eigen = new EigenDecompositionSymmetric(new Array2DRowRealMatrix(scaled, false));
        double most = 0;
        for (double e : eigen.getEigenvalues()) {
            most = Math.max(most, e);
        }
        List<double[]> rows = new ArrayList<>();
        for (int n = 0; n < 6; n++) {
            double e = eigen.getEigenvalue(n);
            if (e > NOTHING * most) {
                double[] row = eigen.getEigenvector(n).toArray();
                for (int i = 0; i < 6; i++) {
                    row[i] *= root[i] * Math.sqrt(e);
                }
                rows.add(row);
            }
        }
        return rows;
    }
}
