package quietband.response.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import quietband.cancellation.CancellationPath;
import quietband.demand.RequirementResult;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.edit.ModelFile;
import quietband.response.ResidualResponse;
import quietband.spectrum.LogGrid;

/**
 * The shipped designs show what the trade expects of each measure and of both (common practice, no source).
 */
class ScenarioTest {

    private static Design model(String name) {
        return ModelFile.read(Path.of("models", name + ".yaml")).design();
    }

    /** Reduction against bolted down, dB, on the axis that gains least. */
    private static double reduction(ResidualResponse response, Stack stack, double f) {
        double[] bare = magnitudes(response, Stack.BARE, f);
        double[] with = magnitudes(response, stack, f);
        double least = Double.POSITIVE_INFINITY;
        for (int j = 0; j < 3; j++) {
            least = Math.min(least, 20 * Math.log10(bare[j] / with[j]));
        }
        return least;
    }

    private static double[] magnitudes(ResidualResponse response, Stack stack, double f) {
        double[] re = new double[3];
        double[] im = new double[3];
        response.at(f);
        response.residual(stack, re, im);
        return new double[] {Math.hypot(re[0], im[0]), Math.hypot(re[1], im[1]), Math.hypot(re[2], im[2])};
    }

    @Test
    void the_compact_platform_alone_gives_20_db_only_from_some_hundreds_of_hertz() {
        ResidualResponse response = new ResidualResponse(model("platform-only"));
        double from = 2000;
        double least = Double.POSITIVE_INFINITY;
        double[] grid = LogGrid.between(4000, 10, 2000);
        for (int i = grid.length - 1; i >= 0 && reduction(response, Stack.ISOLATED, grid[i]) >= 20; i--) {
            from = grid[i];
        }
        for (double f : LogGrid.between(500, 10, 150)) {
            least = Math.min(least, reduction(response, Stack.ISOLATED, f));
        }
        assertThat(from).isBetween(150.0, 400.0);
        assertThat(least).isLessThan(20);
    }

    @Test
    void the_correction_alone_gives_20_db_only_up_to_some_hundreds_of_hertz() {
        ResidualResponse response = new ResidualResponse(model("correction-only"));
        double to = 10;
        for (double f : LogGrid.between(4000, 10, 2000)) {
            if (reduction(response, Stack.CANCELLED, f) < 20) {
                break;
            }
            to = f;
        }
        assertThat(to).isBetween(200.0, 500.0);
        assertThat(reduction(response, Stack.CANCELLED, 2000)).isLessThan(10);
    }

    @Test
    void the_total_lag_that_the_correction_only_design_states_is_the_one_it_has() {
        Cancellation c = model("correction-only").cancellation().orElseThrow();
        CancellationPath path = new CancellationPath(c);
        // slope of the phase between 200 and 400 Hz, far from the high pass and from every pole, with the delay error
        double turned = path.nominal(0, 400).multiply(path.delay(0, 400)).getArgument()
            - path.nominal(0, 200).multiply(path.delay(0, 200)).getArgument();
        // the file says some 43 us
        assertThat(-turned / (2 * Math.PI * 200)).isCloseTo(43e-6, within(1e-6));
    }

    @Test
    void both_together_hold_with_errors_and_no_measure_can_be_left_out() {
        Design main = model("ridge-relay");
        Cancellation c = main.cancellation().orElseThrow();
        assertThat(java.util.Arrays.stream(c.error().gain().toArray()).map(Math::abs).min().orElseThrow())
            .isGreaterThanOrEqualTo(0.01);
        assertThat(Math.abs(c.error().phase().x())).isGreaterThanOrEqualTo(Math.toRadians(0.5) * (1 - 1e-12));
        assertThat(c.error().delay().x()).isGreaterThanOrEqualTo(2e-6);
        assertThat(c.sensor().position().minus(main.oscillator().resonator().position()).length())
            .isGreaterThanOrEqualTo(5e-3);
        Assessment a = Assessor.assess(main);
        assertThat(a.requirementMet()).contains(true);
        assertThat(a.requirements()).filteredOn(RequirementResult::hasMargin)
            .allSatisfy(r -> assertThat(r.marginDb()).as(r.name()).isGreaterThanOrEqualTo(1));
        for (Stack stack : List.of(Stack.BARE, Stack.ISOLATED, Stack.CANCELLED)) {
            assertThat(a.verdict(stack).gaps()).as(stack.key()).isNotEmpty();
        }
    }

    @Test
    void trial_a_fails_at_the_resonances_of_its_platform_only_and_its_cure_holds() {
        Assessment trial = Assessor.assess(model("trial-a"));
        List<double[]> gaps = trial.verdict(Stack.COMBINED).gaps();
        assertThat(gaps).hasSize(1);
        // the modes lie between 65 and 92 Hz
        assertThat(gaps.get(0)[0]).isBetween(50.0, 66.0);
        assertThat(gaps.get(0)[1]).isBetween(92.0, 120.0);
        Assessment cured = Assessor.assess(model("trial-a-cured"));
        assertThat(cured.requirementMet()).contains(true);
        assertThat(cured.verdict(Stack.COMBINED).worst().marginDb()).isGreaterThanOrEqualTo(1);
    }

    @Test
    void springs_alone_from_10_hz_hold_and_need_a_box_many_times_the_size() {
        Design soft = model("soft-platform");
        Assessment a = Assessor.assess(soft);
        assertThat(a.requirementMet()).contains(true);
        double compact = Assessor.assess(model("platform-only")).travel().orElseThrow().counted().x();
        // each way; the box must also hold the block
        assertThat(a.travel().orElseThrow().counted().x()).isGreaterThan(100 * compact).isBetween(0.15, 0.18);
        assertThat(a.travel().orElseThrow().sag().z()).isCloseTo(49e-3, within(0.5e-3));
    }
}
