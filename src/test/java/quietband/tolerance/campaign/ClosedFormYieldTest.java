package quietband.tolerance.campaign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.special.Erf;
import org.junit.jupiter.api.Test;
import quietband.model.Design;
import quietband.numerics.NormalCurve;
import quietband.tolerance.draw.ScatterModels;
import quietband.tolerance.judge.MonteCarloPlan;

/** Yields and percentiles of models whose residual is |e| G in closed form. */
class ClosedFormYieldTest {

    // the fullest stack is the last: cancelled
    private static final int CANCELLED = 1;

    @Test
    void a_normal_gain_error_fails_beyond_its_limit_and_has_the_percentiles_of_a_folded_normal() {
        Design design = ScatterModels.corrected("0.02 ppb/g", "tolerances:\n  - {of: cancellation.error.gain, add: 1 %}\n");
        MonteCarloResult o = ScatterModels.run(design, ScatterModels.UNITS, 2, 3);
        // yield erf(L/(G s sqrt 2)) with L = 2 G s
        double yield = Erf.erf(2 / Math.sqrt(2));
        assertThat((double) o.met(0) / o.units()).isCloseTo(yield, within(ScatterModels.fiveErrors(yield)));
        for (double share : new double[] {0.05, 0.5, 0.95, 0.99}) {
            double expected = 1e-11 * NormalCurve.quantile((1 + share) / 2);
            // five standard errors of the share over the density of |e|, and half a cell of 0.0314 dB
            double density = 2 / Math.sqrt(2 * Math.PI) * Math.exp(-Math.pow(expected / 1e-11, 2) / 2) / 1e-11;
            assertThat(o.percentile(CANCELLED, 1, share)).isCloseTo(expected,
                within(ScatterModels.fiveErrors(share) / density + 0.002 * expected));
        }
    }

    @Test
    void a_uniform_delay_fails_where_its_sine_does() {
        Design design = ScatterModels.corrected("0.1 ppb/g", "tolerances:\n"
            + "  - {of: cancellation.error.delay, add: 10 us, distribution: uniform}\n");
        MonteCarloResult o = ScatterModels.run(design, ScatterModels.UNITS, 2, 2);
        // worst at 2 kHz: 2 sin(pi f tau) = 0.1
        double yield = Math.asin(0.05) / (Math.PI * 2000) / 10e-6;
        assertThat((double) o.met(0) / o.units()).isCloseTo(yield, within(ScatterModels.fiveErrors(yield)));
    }

    @Test
    void two_independent_errors_fail_as_their_double_integral_says() {
        Design design = ScatterModels.corrected("0.02 ppb/g", "tolerances:\n  - {of: cancellation.error.gain, add: 1 %}\n"
            + "  - {of: cancellation.error.phase, add: 10 mrad, distribution: normal}\n");
        MonteCarloResult o = ScatterModels.run(design, ScatterModels.UNITS, 2, 2);
        // |1 - (1 + e) exp(j p)|^2 = e^2 + 4 (1 + e) sin^2(p/2) <= L^2: integrate over e by the midpoint rule
        double yield = 0;
        int n = 20_000;
        for (int i = 0; i < n; i++) {
            double e = -0.02 + 0.04 * (i + 0.5) / n;
            double p = 2 * Math.asin(Math.sqrt((4e-4 - e * e) / (4 * (1 + e))));
            double density = Math.exp(-e * e / 2e-4) / (0.01 * Math.sqrt(2 * Math.PI));
            yield += density * Erf.erf(p / 0.01 / Math.sqrt(2)) * 0.04 / n;
        }
        assertThat((double) o.met(0) / o.units()).isCloseTo(yield, within(ScatterModels.fiveErrors(yield)));
    }

    @Test
    void figures_are_the_same_for_any_number_of_threads_and_the_first_units_stay_the_first() {
        Design design = ScatterModels.corrected("0.02 ppb/g", "tolerances:\n  - {of: cancellation.error.gain, add: 1 %}\n"
            + "  - {of: cancellation.error.delay, add: 1 us}\n");
        MonteCarloResult one = ScatterModels.run(design, 3000, 1, 20);
        MonteCarloResult three = ScatterModels.run(design, 3000, 3, 20);
        for (int i = 0; i < 20; i++) {
            assertThat(three.percentile(CANCELLED, i, 0.95)).isEqualTo(one.percentile(CANCELLED, i, 0.95));
        }
        assertThat(three.worst()).isEqualTo(one.worst());
        assertThat(three.met(0)).isEqualTo(one.met(0));
        java.util.List<UnitRow> few = rows(design, 500);
        assertThat(rows(design, 1000).subList(0, 500)).isEqualTo(few);
    }

    private static java.util.List<UnitRow> rows(Design design, int units) {
        java.util.List<UnitRow> rows = new java.util.ArrayList<>();
        new MonteCarlo(new MonteCarloPlan(design, 3), new double[] {10, 2000}, 2).run(units, () -> false, n -> { }, r -> r, rows::addAll);
        return rows;
    }

    @Test
    void impossible_draws_are_drawn_again_and_counted() {
        Design design = ScatterModels.design("  path: {latency: 1 us}\nrequirement:\n  residual: [{frequency: 10 Hz, limit: 1 ppb/g}]\n"
            + "tolerances:\n  - {of: cancellation.path.latency, add: 1 us, distribution: normal}\n");
        MonteCarloResult o = ScatterModels.run(design, 50_000, 2, 2);
        // a negative latency has the chance Phi(-1) = 0.158655; draws per unit follow 1/(1 - p) - 1 = 0.18857
        // five standard errors of a geometric mean: 5 sqrt(p)/(1 - p)/sqrt(50000) = 0.0106
        assertThat((double) o.redrawn() / o.units()).isCloseTo(0.18857, within(0.0106));
    }
}
