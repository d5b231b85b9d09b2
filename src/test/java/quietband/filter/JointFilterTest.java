package quietband.filter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.filter.design.FilterDesigner;
import quietband.filter.design.FilterResult;
import quietband.filter.fixedpoint.FoundFilters;
import quietband.model.Design;
import quietband.response.Models;
import quietband.response.verdict.Assessor;
import quietband.spectrum.LogGrid;

/** Three filters designed together against three designers who each look at one axis. */
class JointFilterTest {

    private static FilterTask task(Design design, int count, FilterGoal goal) {
        double[] grid = LogGrid.between(80, design.requirement().fromHz(), design.requirement().toHz());
        return new FilterTask(design, FilterForm.TAPS, count, goal, 10, grid, Optional.empty());
    }

    private static String mm(Random random, double most) {
        return String.format(Locale.ROOT, "{x: %.3f mm, y: %.3f mm, z: %.3f mm}", most * (2 * random.nextDouble() - 1),
            most * (2 * random.nextDouble() - 1), most * (2 * random.nextDouble() - 1));
    }

    /** A platform whose sensor, centre and cross-axis errors lie anywhere. */
    private static Design generated(long seed) {
        Random random = new Random(seed);
        return Models.of(Models.oscillator(", position: " + mm(random, 5)) + Models.platform(
            "stiffness: {x: 16 N/mm, y: 14 N/mm, z: 18 N/mm}, damping: 4 N*s/m",
            ", centre_of_gravity: " + mm(random, 3)) + "cancellation: {sensor: {position: " + mm(random, 15)
            + ", bandwidth: 6 kHz, cross_axis: " + String.format(Locale.ROOT, "%.2f", 5 * random.nextDouble()) + " %}, path: {sample_rate: "
            + (20 + random.nextInt(80)) + " kHz, latency: " + random.nextInt(40) + " us}, error: {gain: {x: 1 %, y: -2 %}}}\n");
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void the_joint_sum_of_squares_is_never_larger(long seed) {
        FilterTask task = task(generated(seed), 3, FilterGoal.FLAT);
        // equal filters would differ by rounding only
        assertThat(FilterDesigner.design(task).norm()).isLessThanOrEqualTo(FilterDesigner.alone(task).norm() * (1 + 1e-9));
    }

    @Test
    void with_the_sensor_away_from_the_resonator_the_worst_ratio_is_at_least_1_dB_better() {
        FilterTask task = task(Models.shipped("trial-a.yaml"), 8, FilterGoal.LIMIT);
        double joint = worst(task, FilterDesigner.design(task));
        double alone = worst(task, FilterDesigner.alone(task));
        assertThat(20 * Math.log10(alone / joint)).isGreaterThan(1);
    }

    private static double worst(FilterTask task, FoundFilters found) {
        Design design = task.design().withCancellation(task.design().cancellation().map(c -> c.withFilters(found.filters())));
        return FilterResult.worstRatio(FilterResult.fullest(Assessor.assess(design)));
    }
}
