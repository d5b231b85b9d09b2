package quietband.lot;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.stat.StatUtils;
import org.hipparchus.stat.correlation.Covariance;

/**
 * The normal distribution of a lot's three components, fitted: neither equal axes nor independence nor a mean of zero are assumed.
 *
 * @param n          units it was fitted to
 * @param mean       ppb/g (length 3)
 * @param covariance (ppb/g)^2 (3 x 3)
 */
public record ComponentDistribution(int n, double[] mean, double[][] covariance) {

    /** Fewest units to fit to. */
    static final int FEWEST = 10;

    /** Fits to readings: sample mean, covariance with n - 1, less the mean covariance of the readings where it is stated. */
    static ComponentDistribution of(MeasuredLot lot) {
        double[][] c = new Covariance(new Array2DRowRealMatrix(lot.valuePpbPerG(), false).transpose()).getCovarianceMatrix().getData();
        double[] mean = Arrays.stream(lot.valuePpbPerG()).mapToDouble(StatUtils::mean).toArray();
        return new ComponentDistribution(lot.size(), mean, lot.sigmaPpbPerG().map(s -> less(c, s)).orElse(c));
    }

    /** What is left of a covariance of readings without that of measuring; no direction comes out negative. */
    private static double[][] less(double[][] c, double[][] sigma) {
        double[][] left = {c[0].clone(), c[1].clone(), c[2].clone()};
        for (int i = 0; i < 3; i++) {
            left[i][i] -= StatUtils.sumSq(sigma[i]) / sigma[i].length;
        }
        EigenDecompositionSymmetric eigen = new EigenDecompositionSymmetric(new Array2DRowRealMatrix(left));
        double[] values = Arrays.stream(eigen.getEigenvalues()).map(v -> Math.max(0, v)).toArray();
        return eigen.getV().multiply(MatrixUtils.createRealDiagonalMatrix(values)).multiply(eigen.getVT()).getData();
    }

    /** Standard deviation of a component, ppb/g. */
    public double sigma(int axis) {
        return Math.sqrt(covariance[axis][axis]);
    }

    /** Coefficient of correlation of two components; 0 where one does not scatter. */
    public double correlation(int a, int b) {
        double product = sigma(a) * sigma(b);
        return product > 0 ? covariance[a][b] / product : 0;
    }

    /** Share of units within a limit in ppb/g, which is to say the distribution of the length or of the largest component. */
    public DoubleUnaryOperator within(SortRule.By by) {
        return by == SortRule.By.VECTOR ? length()::within : new WorstAxisDistribution(mean, covariance, NormalQuadrature.FINE)::within;
    }

    private LengthDistribution length() {
        EigenDecompositionSymmetric eigen = new EigenDecompositionSymmetric(new Array2DRowRealMatrix(covariance));
        double[] along = eigen.getV().preMultiply(mean);
        double[] sigma = Arrays.stream(eigen.getEigenvalues()).map(v -> Math.sqrt(Math.max(0, v))).toArray();
        return new LengthDistribution(along, sigma, NormalQuadrature.FINE);
    }

    /**
     * Standard error of the share within a limit from the fit's nine numbers, to first order: var m = C/n,
     * cov(C_ij, C_kl) = (C_ik C_jl + C_il C_jk)/(n - 1), slopes by central differences.
     */
    double standardError(double limit, SortRule.By by) {
        double[] slopeMean = new double[3];
        double[][] slope = new double[3][3];
        for (int i = 0; i < 3; i++) {
            double h = 0.02 * sigma(i);
            slopeMean[i] = h > 0 ? (moved(i, h).within(by).applyAsDouble(limit)
                - moved(i, -h).within(by).applyAsDouble(limit)) / (2 * h) : 0;
            for (int j = i; j < 3; j++) {
                double d = 0.02 * sigma(i) * sigma(j);
                slope[i][j] = d > 0 ? (widened(i, j, d).within(by).applyAsDouble(limit)
                    - widened(i, j, -d).within(by).applyAsDouble(limit)) / (2 * d) / (i == j ? 1 : 2) : 0;
                slope[j][i] = slope[i][j];
            }
        }
        double variance = 0;
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                variance += slopeMean[i] * covariance[i][j] / n * slopeMean[j];
                for (int k = 0; k < 3; k++) {
                    for (int l = 0; l < 3; l++) {
                        variance += slope[i][j] * slope[k][l] * (covariance[i][k] * covariance[j][l]
                            + covariance[i][l] * covariance[j][k]) / (n - 1);
                    }
                }
            }
        }
        return Math.sqrt(Math.max(0, variance));
    }

    private ComponentDistribution moved(int axis, double by) {
        double[] other = mean.clone();
        other[axis] += by;
        return new ComponentDistribution(n, other, covariance);
    }

    private ComponentDistribution widened(int i, int j, double by) {
        double[][] other = {covariance[0].clone(), covariance[1].clone(), covariance[2].clone()};
        other[i][j] += by;
        other[j][i] = other[i][j];
        return new ComponentDistribution(n, mean, other);
    }
}
