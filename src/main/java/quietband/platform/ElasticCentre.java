package quietband.platform;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.SingularValueDecomposition;
import quietband.model.Vec;

/**
 * The point through which a push does not turn the platform. With K_tr the part of the static stiffness that couples
 * displacement and rotation about the centre of gravity, and K_tt that of displacement alone, moving all springs by d
 * changes it by {@code -K_tt [d]x}; the centre is where the least squares of {@code K_tr - K_tt [d]x} put it. Springs
 * without a common centre leave a rest.
 *
 * @param offset of the elastic centre from the centre of gravity, m
 * @param rest   share of the coupling that no shift takes away, 0 to 1
 */
public record ElasticCentre(Vec offset, double rest) {

    /** The centre of a platform's springs. */
    public static ElasticCentre of(Assembly assembly) {
        double[] k = assembly.stiffness();
        double[][] a = new double[9][3];
        double[] b = new double[9];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                b[3 * i + j] = k[6 * i + 3 + j];
            }
            // -K_tt [e]x for the unit vectors e: column j of [e_n]x
            for (int n = 0; n < 3; n++) {
                double[][] cross = cross(n);
                for (int j = 0; j < 3; j++) {
                    double sum = 0;
                    for (int l = 0; l < 3; l++) {
                        sum -= k[6 * i + l] * cross[l][j];
                    }
                    a[3 * i + j][n] = sum;
                }
            }
        }
        Array2DRowRealMatrix matrix = new Array2DRowRealMatrix(a, false);
        ArrayRealVector right = new ArrayRealVector(b, false);
        ArrayRealVector found = (ArrayRealVector) new SingularValueDecomposition(matrix).getSolver().solve(right);
        double left = right.subtract(matrix.operate(found)).getNorm();
        double scale = right.getNorm();
        // a coupling that is nothing but rounding
        double size = 1e-9 * Math.sqrt(Math.abs(k[0] * k[21]) + Math.abs(k[7] * k[28]) + Math.abs(k[14] * k[35]));
        return new ElasticCentre(Vec.of(found.toArray()), scale <= size ? 0 : left / scale);
    }

    private static double[][] cross(int n) {
        double[][] m = new double[3][3];
        int a = (n + 1) % 3;
        int b = (n + 2) % 3;
        // [e]x v = e x v
        m[a][b] = -1;
        m[b][a] = 1;
        return m;
    }
}
