package quietband.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.demand.PhaseNoise;
import quietband.filter.design.FilterDesigner;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.response.DesignGrid;
import quietband.response.Models;
import quietband.response.ResidualResponse;
import quietband.response.verdict.Assessor;
import quietband.spectrum.LogGrid;

/** Least integrated phase noise keeps its conditions on every shipped model with a digital correction in a vibration. */
class NoiseFilterTest {

    @ParameterizedTest
    @ValueSource(strings = {"ridge-relay.yaml", "correction-only.yaml", "trial-a.yaml", "trial-a-cured.yaml"})
    void nowhere_above_no_correction_and_in_sum_below_plain_and_none(String name) {
        Design design = Models.shipped(name);
        FilterTask task = new FilterTask(design, FilterForm.TAPS, 6, FilterGoal.NOISE, 10, LogGrid.between(60, 10, 2000), Optional.empty());
        Cancellation c = design.cancellation().orElseThrow();
        Design with = design.withCancellation(Optional.of(c.withFilters(FilterDesigner.design(task).filters())));
        Requirement r = design.requirement();
        ResidualResponse response = new ResidualResponse(with);
        PhaseNoise noise = new PhaseNoise(with);
        Stack full = Stack.fullest(with);
        Stack plain = full.sprung() ? Stack.ISOLATED : Stack.BARE;
        for (double f : DesignGrid.of(with, r.fromHz(), r.toHz())) {
            response.at(f);
            for (PhaseNoise.Row row : noise.rows()) {
                double on = noise.vibration(row, f, response.squares(full)) + noise.floor(full, f);
                double off = noise.vibration(row, f, response.squares(plain)) + noise.floor(plain, f);
                assertThat(10 * Math.log10(on / off)).as(row.label() + " at " + f).isLessThan(0.01);
            }
        }
        double found = Assessor.assess(with).worstJitterRad();
        // the program's own search settles to some 1e-4
        assertThat(found).isLessThanOrEqualTo(Assessor.assess(design.withCancellation(Optional.of(c.withoutFilter()))).worstJitterRad()
            * (1 + 1e-4));
        assertThat(found).isLessThanOrEqualTo(Assessor.assess(design.withCancellation(Optional.empty())).worstJitterRad() * (1 + 1e-4));
    }

    @Test
    void where_nothing_makes_noise_any_correction_is_above_none_and_that_is_told() {
        FilterTask task = new FilterTask(Models.shipped("rough-ride.yaml"), FilterForm.TAPS, 6, FilterGoal.NOISE, 10, new double[] {10},
            Optional.empty());
        assertThatThrownBy(() -> FilterDesigner.design(task)).isInstanceOf(FilterException.class)
            .hasMessageContaining("oscillator.static_phase_noise");
    }
}
