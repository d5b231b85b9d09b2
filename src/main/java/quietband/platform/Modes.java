package quietband.platform;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * The six undamped modes of M and the real static stiffness, K phi = w^2 M phi, as the symmetric problem of
 * L^-1 K L^-T with M = L L^T. Vectors are mass-normalised, phi^T M phi = 1; where modes coincide, the vectors are chosen so
 * that each is as purely one coordinate as the set allows.
 */
public final class Modes {

    private static final double SAME = 1e-9;
    private static final double ZERO = 1e-12;
    private static final String[] MOTION = {"x", "y", "z", "about x", "about y", "about z"};

    private final double[] omega = new double[6];
    private final double[][] phi = new double[6][6];
    private final double[] mass;

    Modes(Assembly assembly) {
        mass = assembly.mass();
        RealMatrix l = new CholeskyDecomposition(Assembly.square(mass)).getL();
        RealMatrix inverse = new LUDecomposition(l).getSolver().getInverse();
        RealMatrix k = inverse.multiply(Assembly.square(assembly.stiffness())).multiply(inverse.transpose());
        EigenDecompositionSymmetric eigen = rising(k.add(k.transpose()).scalarMultiply(0.5));
        double top = eigen.getEigenvalue(5);
        RealMatrix back = inverse.transpose();
        double[][] u = new double[6][];
        for (int n = 0; n < 6; n++) {
            double w2 = eigen.getEigenvalue(n);
            if (!(w2 > ZERO * top)) {
                throw new SingularPlatformException(describeFree(back.operate(eigen.getEigenvector(n).toArray())));
            }
            omega[n] = Math.sqrt(w2);
            u[n] = eigen.getEigenvector(n).toArray();
        }
        alignRepeated(u);
        for (int n = 0; n < 6; n++) {
            phi[n] = back.operate(u[n]);
            fixSign(phi[n]);
        }
    }

    /** The decomposition with eigenvalues from the lowest up. */
    private static EigenDecompositionSymmetric rising(RealMatrix matrix) {
        return new EigenDecompositionSymmetric(matrix, EigenDecompositionSymmetric.DEFAULT_EPSILON, false);
    }

    /** Within each set of equal frequencies, diagonalises a fixed operator with distinct weights per coordinate. */
    private void alignRepeated(double[][] u) {
        for (int start = 0; start < 6;) {
            int end = start + 1;
            while (end < 6 && omega[end] - omega[start] <= SAME * omega[start]) {
                end++;
            }
            if (end - start > 1) {
                align(u, start, end);
            }
            start = end;
        }
    }

    private static void align(double[][] u, int start, int end) {
        int n = end - start;
        double[][] s = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                for (int c = 0; c < 6; c++) {
                    s[i][j] += (c + 1) * u[start + i][c] * u[start + j][c];
                }
            }
        }
        EigenDecompositionSymmetric eigen = rising(new Array2DRowRealMatrix(s, false));
        double[][] mixed = new double[n][6];
        for (int i = 0; i < n; i++) {
            double[] mix = eigen.getEigenvector(i).toArray();
            for (int j = 0; j < n; j++) {
                for (int c = 0; c < 6; c++) {
                    mixed[i][c] += mix[j] * u[start + j][c];
                }
            }
        }
        System.arraycopy(mixed, 0, u, start, n);
    }

    /** The coordinate with the largest share moves in the positive sense. */
    private void fixSign(double[] vector) {
        if (vector[leading(vector)] < 0) {
            for (int i = 0; i < 6; i++) {
                vector[i] = -vector[i];
            }
        }
    }

    /** M times a vector. */
    private double[] momentum(double[] vector) {
        double[] p = new double[6];
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                p[i] += mass[6 * i + j] * vector[j];
            }
        }
        return p;
    }

    /** Natural frequency of mode n (0 to 5, rising), rad/s. */
    public double omega(int n) {
        return omega[n];
    }

    /** Natural frequency of mode n, Hz. */
    public double frequencyHz(int n) {
        return omega[n] / (2 * Math.PI);
    }

    /** Mass-normalised shape of mode n (length 6: displacement of the centre of gravity, rotation); a copy. */
    public double[] shape(int n) {
        return phi[n].clone();
    }

    /** Share of each of the six coordinates in the kinetic energy of mode n; adds up to 1. */
    public double[] energyShares(int n) {
        return shares(phi[n]);
    }

    private double[] shares(double[] vector) {
        double[] share = new double[6];
        double[] p = momentum(vector);
        double sum = 0;
        for (int i = 0; i < 6; i++) {
            share[i] = vector[i] * p[i];
            sum += share[i];
        }
        for (int i = 0; i < 6; i++) {
            share[i] /= sum;
        }
        return share;
    }

    /**
     * The shape of mode n in words, from the kinetic energy: "translation z", "rotation about y", and when the leading
     * coordinate holds less than 90 % of it the next one too: "translation x with rotation about y".
     */
    public String inWords(int n) {
        double[] share = energyShares(n);
        Integer[] order = {0, 1, 2, 3, 4, 5};
        Arrays.sort(order, (a, b) -> Double.compare(share[b], share[a]));
        String words = word(order[0]);
        return share[order[0]] < 0.9 ? words + " with " + word(order[1]) : words;
    }

    private static String word(int coordinate) {
        return (coordinate < 3 ? "translation " : "rotation ") + MOTION[coordinate];
    }

    private int leading(double[] vector) {
        double[] share = shares(vector);
        int lead = 0;
        for (int i = 1; i < 6; i++) {
            lead = share[i] > share[lead] ? i : lead;
        }
        return lead;
    }

    private String describeFree(double[] vector) {
        return "the springs do not hold the platform in " + word(leading(vector))
            + ": its mode would be at 0 Hz; add stiffness or a spring at another place";
    }

    /** Adds C_m = M Phi diag(2 z w_n) Phi^T M to a damping matrix (modified, length 36). */
    void addModalDamping(double ratio, double[] damping) {
        for (int n = 0; n < 6; n++) {
            Assembly.addRank1(damping, momentum(phi[n]), 0, 2 * ratio * omega[n]);
        }
    }

    /** phi_a^T X phi_b for a symmetric 6 x 6 matrix (length 36). */
    public double project(double[] matrix, int a, int b) {
        double sum = 0;
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                sum += phi[a][i] * matrix[6 * i + j] * phi[b][j];
            }
        }
        return sum;
    }
}
