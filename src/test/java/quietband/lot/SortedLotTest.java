package quietband.lot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import quietband.lot.SortRule.By;
import quietband.numerics.NormalCurve;

/** Classes, yield, risks and the units to build. */
class SortedLotTest {

    private static final double[][] EQUAL = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};

    private static SortRule rule(double limit, By by, double guard, double risk, double... edges) {
        return new SortRule(limit, by, edges.length == 0 ? new double[] {limit} : edges, guard, risk, 0.95, 10);
    }

    private static double[][] scaled(double s) {
        return new double[][] {{s * s, 0, 0}, {0, s * s, 0}, {0, 0, s * s}};
    }

    private static Optional<double[][]> sigma(int n, double s) {
        double[] all = new double[n];
        Arrays.fill(all, s);
        return Optional.of(new double[][] {all, all, all});
    }

    // System:  lot of 2,000, each axis normal with the same deviation, typical (median) vector 1 ppb/g: s = 1/1.53817
    // Result:  shares under 0.5, 0.3, 0.2 ppb/g by Maxwell's law 10.16 %, 2.453 %, 0.753 %: built per good one 9.84, 40.8, 133
    // Note:    the shares of a seed scatter: of 100 seeds each must lie within 2 standard errors in 88 to 100
    @Test
    void a_lot_of_2000_has_the_shares_of_the_law_within_two_standard_errors() {
        double s = 1 / 1.5381722545;
        double[] edges = {0.2, 0.3, 0.5};
        int[] near = new int[3];
        for (int seed = 0; seed < 100; seed++) {
            double[][] units = ComponentDistributionTest.drawn(new double[3], scaled(s), 2000, seed);
            SortedLot sorted = SortedLot.of(ComponentDistributionTest.lot(units, Optional.empty()), rule(0.3, By.VECTOR, 0, 1, edges),
                0, 1);
            for (int k = 0; k < 3; k++) {
                double p = LengthDistribution.equal(edges[k], 0, s);
                double error = Math.sqrt(p * (1 - p) / 2000);
                near[k] += Math.abs(sorted.edges().get(k).share().estimate() - p) <= 2 * error ? 1 : 0;
                if (seed == 0) {
                    assertThat(sorted.edges().get(k).fittedShare()).isCloseTo(p, within(4 * sorted.edges().get(k).fittedError()));
                    assertThat(sorted.edges().get(k).builtPerGood()).isCloseTo(1 / sorted.edges().get(k).share().estimate(), within(1e-9));
                }
            }
        }
        assertThat(1 / LengthDistribution.equal(0.5, 0, s)).isCloseTo(9.840, within(0.001));
        assertThat(1 / LengthDistribution.equal(0.3, 0, s)).isCloseTo(40.77, within(0.01));
        assertThat(1 / LengthDistribution.equal(0.2, 0, s)).isCloseTo(132.9, within(0.1));
        assertThat(near[0]).isBetween(88, 100);
        assertThat(near[1]).isBetween(88, 100);
        assertThat(near[2]).isBetween(88, 100);
    }

    @Test
    void the_chance_of_one_reading_is_the_closed_form() {
        // by axis, one reading of 0.29 +- 0.02 against 0.3: Phi(0.5) - Phi(-29.5)
        double[][] one = {{0.29}, {0}, {0}};
        SortedLot axis = SortedLot.of(ComponentDistributionTest.lot(one, sigma(1, 0.02)), rule(0.3, By.AXIS, 0, 1), 0, 1);
        assertThat(axis.within().orElseThrow()[0]).isCloseTo(NormalCurve.below(0.5), within(5e-6)); // quick nodes: a few millionths
        // by vector, equal uncertainties: the noncentral law in closed form
        double[][] vector = {{0.2}, {0.2}, {0.1}};
        SortedLot length = SortedLot.of(ComponentDistributionTest.lot(vector, sigma(1, 0.02)), rule(0.3, By.VECTOR, 0, 1), 0, 1);
        // d = r = 0.3: F = 1/2 - Phi(-30) - s/(d sqrt(2 pi)) = 0.5 - 0.0666667 * 0.3989423
        assertThat(length.within().orElseThrow()[0]).isCloseTo(0.5 - 0.02 / 0.3 * 0.3989422804, within(1e-9));
    }

    @Test
    void stated_risks_are_those_that_happen() {
        int n = 30_000;
        double[][] truth = ComponentDistributionTest.drawn(new double[3], scaled(0.6), n, 21);
        double[][] noise = ComponentDistributionTest.drawn(new double[3], scaled(0.1), n, 22);
        double[][] reading = new double[3][n];
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < n; k++) {
                reading[i][k] = truth[i][k] + noise[i][k];
            }
        }
        for (By by : By.values()) {
            MeasuredLot real = ComponentDistributionTest.lot(truth, Optional.empty());
            for (double guard : new double[] {0, 0.1}) {
                SortedLot sorted = SortedLot.of(ComponentDistributionTest.lot(reading, sigma(n, 0.1)), rule(0.6, by, guard, 1), 0, 2);
                int bad = 0;
                int good = 0;
                for (int k = 0; k < n; k++) {
                    boolean fine = real.value(k, by) <= 0.6;
                    bad += sorted.accepted()[k] && !fine ? 1 : 0;
                    good += !sorted.accepted()[k] && fine ? 1 : 0;
                }
                SortedLot.Risks r = sorted.risks().orElseThrow();
                // four standard errors of a count
                assertThat((double) bad).isCloseTo(n * r.acceptedBad(), within(4 * Math.sqrt(bad) + 3));
                assertThat((double) good).isCloseTo(n * r.refusedGood(), within(4 * Math.sqrt(good) + 3));
                assertThat(sorted.risksWithGuard(guard)).isEqualTo(r);
            }
        }
    }

    /** One axis scatters, limit at the mean: P(T above, M below) = arccos(rho)/(2 pi), rho = s/sqrt(s^2 + u^2) (Sheppard). */
    @Test
    void risks_of_one_axis_at_its_mean_are_sheppards_closed_form() {
        int n = 40_000;
        double[][] scatter = {{0.04, 0, 0}, {0, 1e-12, 0}, {0, 0, 1e-12}};
        double[][] reading = ComponentDistributionTest.drawn(new double[] {5, 0, 0}, scatter, n, 8);
        double s = 0.2 * Math.sqrt(0.75);
        double u = 0.1;
        double[] small = new double[n];
        Arrays.fill(small, 1e-9);
        double[] first = new double[n];
        Arrays.fill(first, u);
        SortedLot sorted = SortedLot.of(ComponentDistributionTest.lot(reading, Optional.of(new double[][] {first, small, small})),
            rule(5, By.AXIS, 0, 1), 0, 2);
        double expected = Math.acos(s / Math.sqrt(s * s + u * u)) / (2 * Math.PI);
        // deviation and centre from 40,000 readings: the share is good to about 1 %
        assertThat(sorted.risks().orElseThrow().acceptedBad()).isCloseTo(expected, within(0.02 * expected));
        assertThat(sorted.risks().orElseThrow().refusedGood()).isCloseTo(expected, within(0.02 * expected));
    }

    @Test
    void a_risk_bound_is_a_guard_band_of_so_many_uncertainties() {
        // one axis far from zero and no law (three units): P(bad) = 5 % at 1.6449 u below the limit
        double[][] three = {{0.3 - 1.66 * 0.02, 0.3 - 1.63 * 0.02, 0.1}, {0, 0, 0}, {0, 0, 0}};
        SortedLot sorted = SortedLot.of(ComponentDistributionTest.lot(three, sigma(3, 0.02)), rule(0.3, By.AXIS, 0, 0.05), 0, 1);
        assertThat(sorted.accepted()).containsExactly(true, false, true);
    }

    // Result:  10 good ones of a share of 0.5 with 95 %: 28 units give P = 0.9564, 27 give 0.9388 (binomial tail, summed by hand)
    @Test
    void units_to_build_are_the_least_that_reach_the_confidence() {
        assertThat(BuildCount.of(10, 0.5, 0.95)).isEqualTo(28);
        assertThat(binomialTail(10, 28, 0.5)).isGreaterThan(0.95);
        assertThat(binomialTail(10, 27, 0.5)).isLessThan(0.95);
        // one good one: the least n with 1 - (1-p)^n >= C, ln(0.05)/ln(0.9) = 28.4 (as Wilks' 29)
        assertThat(BuildCount.of(1, 0.1, 0.95)).isEqualTo(29);
        assertThat(BuildCount.of(3, 1, 0.95)).isEqualTo(3);
        assertThat(BuildCount.of(3, 0, 0.95)).isEqualTo(-1);
    }

    private static double binomialTail(int k, int n, double p) {
        double term = Math.pow(1 - p, n);
        double below = 0;
        for (int i = 0; i < k; i++) {
            below += term;
            term *= (double) (n - i) / (i + 1) * p / (1 - p);
        }
        return 1 - below;
    }

    @Test
    void the_law_is_told_from_a_lot_that_does_not_follow_it() {
        double[][] units = ComponentDistributionTest.drawn(new double[3], EQUAL, 2000, 2);
        SortedLot normal = SortedLot.of(ComponentDistributionTest.lot(units, Optional.empty()), rule(1, By.VECTOR, 0, 1), 0, 1);
        assertThat(normal.fittedDistance()).isLessThan(1.36 / Math.sqrt(2000));
        for (int i = 0; i < 2000; i++) {
            double scale = i % 10 == 0 ? 5 : 0.5;
            for (double[] column : units) {
                column[i] *= scale;
            }
        }
        SortedLot mixed = SortedLot.of(ComponentDistributionTest.lot(units, Optional.empty()), rule(1, By.VECTOR, 0, 1), 0, 1);
        assertThat(mixed.fittedDistance()).isGreaterThan(1.36 / Math.sqrt(2000));
    }
}
