package quietband.lot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.hipparchus.distribution.multivariate.MultivariateNormalDistribution;
import org.hipparchus.special.Erf;
import org.junit.jupiter.api.Test;
import quietband.lot.SortRule.By;
import quietband.numerics.NormalCurve;

/** How long a vector of normal components is, and what follows for a lot. */
class ComponentDistributionTest {

    private static final double[][] TIED = {{0.36, 0.15, -0.10}, {0.15, 0.81, 0.20}, {-0.10, 0.20, 0.25}};
    private static final double[] OFF = {0.1, -0.3, 0.2};

    private static double[][] diagonal(double a, double b, double c) {
        return new double[][] {{a * a, 0, 0}, {0, b * b, 0}, {0, 0, c * c}};
    }

    // Ref:     J. C. Maxwell's distribution: F(r) = erf(u) - 2 u/sqrt(pi) exp(-u^2), u = r/(s sqrt 2) (from memory)
    // Result:  Hipparchus' error function; median 1.5382 s (derived)
    @Test
    void equal_axes_give_maxwells_distribution() {
        double s = 0.626657;
        DoubleUnaryOperator law = new ComponentDistribution(100, new double[3], diagonal(s, s, s)).within(By.VECTOR);
        for (double r = 0.05; r < 4; r *= 1.3) {
            double u = r / s / Math.sqrt(2);
            // both error functions are good to about 1e-15
            assertThat(law.applyAsDouble(r)).isCloseTo(Erf.erf(u) - 2 * u / Math.sqrt(Math.PI) * Math.exp(-u * u), within(1e-13));
        }
        assertThat(law.applyAsDouble(1.5381722545 * s)).isCloseTo(0.5, within(1e-9));
    }

    @Test
    void nearly_equal_axes_go_over_into_equal_ones() {
        for (double d : new double[] {0, 0.3}) {
            DoubleUnaryOperator equal = new ComponentDistribution(9, new double[] {d, 0, 0}, diagonal(0.5, 0.5, 0.5)).within(By.VECTOR);
            DoubleUnaryOperator nearly = new ComponentDistribution(9, new double[] {d, 0, 0}, diagonal(0.5, 0.5000001, 0.5))
                .within(By.VECTOR);
            for (double r = 0.1; r < 2; r += 0.3) {
                // closed form against integration; the change of 2e-7 itself moves the share by less
                assertThat(nearly.applyAsDouble(r)).isCloseTo(equal.applyAsDouble(r), within(3e-7));
            }
        }
    }

    /** Second road: the density summed over cells of the cube around the ball; 1 where inside, in spherical shells. */
    private static double bySphere(double[] mean, double[][] c, double r) {
        MultivariateNormalDistribution density = new MultivariateNormalDistribution(mean, c);
        int n = 60;
        double sum = 0;
        for (int a = 0; a < n; a++) {
            double rho = r * (a + 0.5) / n;
            for (int b = 0; b < n; b++) {
                double u = -1 + 2 * (b + 0.5) / n;
                for (int k = 0; k < n; k++) {
                    double phi = 2 * Math.PI * k / n;
                    double flat = rho * Math.sqrt(1 - u * u);
                    sum += rho * rho * density.density(new double[] {flat * Math.cos(phi), flat * Math.sin(phi), rho * u});
                }
            }
        }
        return sum * r / n * 2 / n * 2 * Math.PI / n;
    }

    @Test
    void unequal_and_correlated_axes_agree_with_the_density_summed_over_the_ball() {
        ComponentDistribution law = new ComponentDistribution(100, OFF, TIED);
        for (double r : new double[] {0.3, 0.7, 1.5}) {
            double share = law.within(By.VECTOR).applyAsDouble(r);
            // midpoint rule with 60 steps in radius and height: error of about (1/60)^2/6
            assertThat(share).isCloseTo(bySphere(OFF, TIED, r), within(3e-4 * share));
        }
    }

    @Test
    void vector_and_worst_axis_agree_with_drawn_units() {
        ComponentDistribution law = new ComponentDistribution(100, OFF, TIED);
        double[][] units = drawn(OFF, TIED, 200_000, 3);
        for (By by : By.values()) {
            for (double limit : new double[] {0.4, 0.8, 1.2}) {
                double p = law.within(by).applyAsDouble(limit);
                // four standard errors of a share
                assertThat(share(units, limit, by)).isCloseTo(p, within(4 * Math.sqrt(p * (1 - p) / 200_000)));
            }
        }
    }

    @Test
    void the_worst_axis_of_independent_axes_is_a_product() {
        DoubleUnaryOperator law = new ComponentDistribution(9, new double[] {0.1, 0, 0}, diagonal(0.5, 0.3, 0)).within(By.AXIS);
        double x = NormalCurve.below((0.4 - 0.1) / 0.5) - NormalCurve.below((-0.4 - 0.1) / 0.5);
        double y = 2 * NormalCurve.below(0.4 / 0.3) - 1;
        assertThat(law.applyAsDouble(0.4)).isCloseTo(x * y, within(1e-10));
    }

    private static double share(double[][] units, double limit, By by) {
        MeasuredLot lot = lot(units, Optional.empty());
        int k = 0;
        for (int i = 0; i < lot.size(); i++) {
            k += lot.value(i, by) <= limit ? 1 : 0;
        }
        return (double) k / lot.size();
    }

    /** Units as three columns, by the Cholesky factor of the covariance written out. */
    static double[][] drawn(double[] mean, double[][] c, int n, long seed) {
        double a = Math.sqrt(c[0][0]);
        double b = c[1][0] / a;
        double d = Math.sqrt(c[1][1] - b * b);
        double e = c[2][0] / a;
        double f = (c[2][1] - e * b) / d;
        double g = Math.sqrt(c[2][2] - e * e - f * f);
        var normal = ZigguratSampler.NormalizedGaussian.of(RandomSource.XO_RO_SHI_RO_128_PP.create(seed));
        double[][] units = new double[3][n];
        for (int i = 0; i < n; i++) {
            double u = normal.sample();
            double v = normal.sample();
            double w = normal.sample();
            units[0][i] = mean[0] + a * u;
            units[1][i] = mean[1] + b * u + d * v;
            units[2][i] = mean[2] + e * u + f * v + g * w;
        }
        return units;
    }

    static MeasuredLot lot(double[][] units, Optional<double[][]> sigma) {
        int n = units[0].length;
        return new MeasuredLot("lot.csv", "", new String[n], new int[n], units, sigma, List.of());
    }

    @Test
    void a_fitted_law_is_as_uncertain_as_it_says() {
        int n = 400;
        double truth = new ComponentDistribution(n, OFF, TIED).within(By.VECTOR).applyAsDouble(0.5);
        double sum = 0;
        double squares = 0;
        double stated = 0;
        int lots = 60;
        for (int seed = 0; seed < lots; seed++) {
            ComponentDistribution law = ComponentDistribution.of(lot(drawn(OFF, TIED, n, seed), Optional.empty()));
            double off = law.within(By.VECTOR).applyAsDouble(0.5) - truth;
            sum += off;
            squares += off * off;
            stated += law.standardError(0.5, By.VECTOR) / lots;
        }
        // a standard deviation from 60 lots is good to 9 %; three of those
        assertThat(Math.sqrt(squares / lots)).isCloseTo(stated, within(0.28 * stated));
        assertThat(Math.abs(sum / lots)).isLessThan(3 * stated / Math.sqrt(lots) + 0.2 * stated);
    }

    @Test
    void what_measuring_added_is_taken_off_the_fitted_law() {
        double[][] units = drawn(OFF, TIED, 40_000, 5);
        double[][] noise = drawn(new double[3], diagonal(0.3, 0.2, 0.1), 40_000, 6);
        double[][] sigma = new double[3][40_000];
        for (int i = 0; i < 3; i++) {
            java.util.Arrays.fill(sigma[i], new double[] {0.3, 0.2, 0.1}[i]);
            for (int k = 0; k < 40_000; k++) {
                units[i][k] += noise[i][k];
            }
        }
        ComponentDistribution law = ComponentDistribution.of(lot(units, Optional.of(sigma)));
        for (int i = 0; i < 3; i++) {
            // a variance from 40,000 is good to 0.7 %; of the sum with the noise's
            assertThat(law.covariance()[i][i]).isCloseTo(TIED[i][i], within(0.03 * TIED[i][i] + 0.003));
        }
    }
}
