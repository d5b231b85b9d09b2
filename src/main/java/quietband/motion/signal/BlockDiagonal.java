package quietband.motion.signal;

import java.util.Optional;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionNonSymmetric;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * A change of coordinates that takes a system apart into single and paired states, F = V D V^-1.
 *
 * @param toStates   V: from the new coordinates to the states
 * @param fromStates V^-1
 * @param paired     for each new coordinate whether it is the first of a pair
 */
record BlockDiagonal(double[][] toStates, double[][] fromStates, boolean[] paired) {

    private static final double CONDITION = 1e6;

    /** Splits a matrix; empty when its eigenvectors are too nearly dependent to be trusted. */
    static Optional<BlockDiagonal> of(double[][] f) {
        int n = f.length;
        if (n < 3) {
            return Optional.empty();
        }
        try {
            RealMatrix matrix = new Array2DRowRealMatrix(f);
            EigenDecompositionNonSymmetric eigen = new EigenDecompositionNonSymmetric(matrix);
            RealMatrix v = eigen.getV();
            RealMatrix d = eigen.getD();
            for (int j = 0; j < n; j++) {
                double length = v.getColumnVector(j).getNorm();
                v.setColumnVector(j, v.getColumnVector(j).mapDivide(length));
            }
            boolean[] paired = new boolean[n];
            for (int j = 0; j + 1 < n; j++) {
                paired[j] = (j == 0 || !paired[j - 1]) && (d.getEntry(j, j + 1) != 0 || d.getEntry(j + 1, j) != 0);
            }
            RealMatrix inverse = new LUDecomposition(v, 1e-300).getSolver().getInverse();
            RealMatrix left = inverse.multiply(matrix).multiply(v);
            double off = 0;
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    boolean inside = i == j || (j == i + 1 && paired[i]) || (i == j + 1 && paired[j]);
                    off = inside ? off : Math.max(off, Math.abs(left.getEntry(i, j)));
                }
            }
            double condition = v.getFrobeniusNorm() * inverse.getFrobeniusNorm();
            boolean trusted = condition < CONDITION * n && off < 1e-11 * CONDITION * matrix.getFrobeniusNorm();
            return trusted ? Optional.of(new BlockDiagonal(v.getData(), inverse.getData(), paired)) : Optional.empty();
        } catch (MathRuntimeException e) {
            return Optional.empty();
        }
    }
}
