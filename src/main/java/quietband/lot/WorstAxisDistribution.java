package quietband.lot;

import java.util.function.DoubleUnaryOperator;
import quietband.numerics.NormalCurve;

/**
 * The largest of three normal components: P(all |X_i| <= r), for any covariance. One component is integrated by the error
 * function under its distribution given the other two, those by Gauss-Legendre.
 */
final class WorstAxisDistribution {

    /** A component is never taken as closer tied to the others than this share of its own deviation. */
    private static final double LOOSE = 1e-3;

    private final NormalQuadrature quadrature;
    private final double[] mean = new double[3];
    private final double sigma0;
    private final double slope10;
    private final double sigma1;
    private final double slope20;
    private final double slope21;
    private final double sigma2;

    /** For a mean (length 3) and a covariance (3 x 3, positive semi-definite). */
    WorstAxisDistribution(double[] mean, double[][] covariance, NormalQuadrature quadrature) {
        this.quadrature = quadrature;
        int last = loosest(covariance);
        int first = (last + 1) % 3;
        int second = (last + 2) % 3;
        if (covariance[first][first] > covariance[second][second]) {
            int swap = first;
            first = second;
            second = swap;
        }
        int[] order = {first, second, last};
        double[][] c = new double[3][3];
        for (int i = 0; i < 3; i++) {
            this.mean[i] = mean[order[i]];
            for (int j = 0; j < 3; j++) {
                c[i][j] = covariance[order[i]][order[j]];
            }
        }
        sigma0 = Math.sqrt(c[0][0]);
        slope10 = c[0][0] > 0 ? c[1][0] / c[0][0] : 0;
        double v1 = Math.max(0, c[1][1] - slope10 * c[1][0]);
        sigma1 = Math.max(Math.sqrt(v1), sigma0 > 0 ? LOOSE * Math.sqrt(c[1][1]) : 0);
        slope21 = sigma1 > 0 ? (c[2][1] - slope10 * c[2][0]) / (sigma1 * sigma1) : 0;
        slope20 = (c[0][0] > 0 ? c[2][0] / c[0][0] : 0) - slope21 * slope10;
        double v2 = c[2][2] - (c[0][0] > 0 ? c[2][0] * c[2][0] / c[0][0] : 0) - slope21 * slope21 * sigma1 * sigma1;
        sigma2 = Math.max(Math.sqrt(Math.max(0, v2)), LOOSE * Math.sqrt(c[2][2]));
    }

    /** The component that the other two tell least about. */
    private static int loosest(double[][] c) {
        int best = 0;
        double most = -1;
        for (int i = 0; i < 3; i++) {
            int j = (i + 1) % 3;
            int k = (i + 2) % 3;
            double base = c[j][j] * c[k][k] - c[j][k] * c[j][k];
            double told = base > 1e-12 * c[j][j] * c[k][k]
                ? (c[i][j] * c[i][j] * c[k][k] - 2 * c[i][j] * c[i][k] * c[j][k] + c[i][k] * c[i][k] * c[j][j]) / base
                : Math.max(c[j][j] > 0 ? c[i][j] * c[i][j] / c[j][j] : 0, c[k][k] > 0 ? c[i][k] * c[i][k] / c[k][k] : 0);
            if (c[i][i] - told > most) {
                most = c[i][i] - told;
                best = i;
            }
        }
        return best;
    }

    /** Share of units none of whose components is beyond +-r. */
    double within(double r) {
        return r > 0 ? Math.max(0, Math.min(1, within(r, mean[0], sigma0, x -> middle(x - mean[0], r)))) : 0;
    }

    private double middle(double d0, double r) {
        return within(r, mean[1] + slope10 * d0, sigma1, x -> inner(d0, x - mean[1], r));
    }

    /** A normal number within +-r, each of its values weighted. */
    private double within(double r, double centre, double sigma, DoubleUnaryOperator weight) {
        if (sigma == 0) {
            return Math.abs(centre) > r ? 0 : weight.applyAsDouble(centre);
        }
        return quadrature.integral(Math.max(-r, centre - quadrature.far * sigma), Math.min(r, centre + quadrature.far * sigma),
            x -> NormalQuadrature.density((x - centre) / sigma, sigma) * weight.applyAsDouble(x));
    }

    private double inner(double d0, double d1, double r) {
        double centre = mean[2] + slope20 * d0 + slope21 * d1;
        if (sigma2 == 0) {
            return Math.abs(centre) > r ? 0 : 1;
        }
        return NormalCurve.below((r - centre) / sigma2) - NormalCurve.below((-r - centre) / sigma2);
    }
}
