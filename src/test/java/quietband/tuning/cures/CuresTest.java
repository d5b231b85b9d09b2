package quietband.tuning.cures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import quietband.demand.ResidualDemand;
import quietband.demand.ResidualPoint;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.model.quantity.Quantities;
import quietband.response.DesignGrid;
import quietband.response.ResidualResponse;
import quietband.response.verdict.Assessor;
import quietband.units.Amounts;

/** What would just hold, written into the design, must leave a margin of nothing. */
class CuresTest {

    private static final Path MODELS = Path.of("models");

    private static String text(String model) {
        try {
            return Files.readString(MODELS.resolve(model));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Design design(String text) {
        return ModelFile.parse(MODELS.resolve("invented.yaml"), text).design();
    }

    private static String changed(String model, String... pairs) {
        String text = text(model);
        for (int i = 0; i < pairs.length; i += 2) {
            assertThat(text).contains(pairs[i]);
            text = text.replace(pairs[i], pairs[i + 1]);
        }
        return text;
    }

    static Stream<Design> designs() {
        String main = "ridge-relay.yaml";
        return Stream.of(text("bolted-down.yaml"), text("platform-only.yaml"), text("correction-only.yaml"), text(main),
            text("trial-a.yaml"), text("trial-a-cured.yaml"), text("soft-platform.yaml"),
            changed(main, "gain: {x: 1 %, y: 1 %, z: -1 %}", "gain: {x: 9 %, y: 4 %, z: -7 %}"),
            changed(main, "high_pass: {frequency: 0.3 Hz", "high_pass: {frequency: 3 Hz"),
            changed(main, "latency: 8 us", "latency: 90 us"),
            changed(main, "place: platform ", "place: housing "),
            changed(main, "by: axis", "by: vector", "centre_of_gravity: {x: 0.3 mm", "centre_of_gravity: {x: 5 mm",
                "residual: [{frequency: 10 Hz, limit: 0.05 ppb/g}, {frequency: 2 kHz, limit: 0.05 ppb/g}]",
                "residual: from_phase_noise"),
            changed(main, "calibrated: each ", "weights: {x: 0.3 ppb/g, y: 0.3 ppb/g, z: 0.5 ppb/g} "),
            changed("platform-only.yaml", "loss_factor: 28 %", "loss_factor: 0", "damping: {x: 4 N*s/m, y: 4 N*s/m, z: 4 N*s/m}",
                "damping: 0 N*s/m", "from: 10 Hz", "from: 85 Hz", "limit: 0.05 ppb/g", "limit: 1 ppb/g"))
            .map(CuresTest::design);
    }

    // the search stops within 0.002 dB; both the search and this check follow the residual to about 0.001 dB
    @ParameterizedTest
    @MethodSource("designs")
    void every_change_that_just_holds_leaves_a_margin_of_nothing_in_its_gap(Design design) {
        List<CoverageGap> gaps = Cures.of(Assessor.assess(design));
        for (CoverageGap gap : gaps) {
            assertThat(gap.cure()).as("%s from %s Hz", gap.stack(), gap.fromHz()).isPresent();
            List<Cure> all = new ArrayList<>(gap.others());
            gap.single().ifPresent(all::add);
            gap.together().ifPresent(all::add);
            for (Cure cure : all) {
                Design written = written(design, cure);
                assertThat(margin(written, gap, gaps)).as("%s: %s", gap.stack(), cure.settings()).isCloseTo(0, within(0.02));
            }
        }
    }

    /** The design with the values as a file would hold them: printed and read again. */
    private static Design written(Design design, Cure cure) {
        Quantities q = design.quantities();
        for (ValueChange s : cure.settings()) {
            q = q.with(s.of(), Amounts.read(Amounts.print(s.holds(), s.dimension()), s.dimension()));
        }
        return design.with(q);
    }

    /** Least margin in the gap and half way to the neighbouring gaps, on a grid finer than the program's own. */
    private static double margin(Design design, CoverageGap gap, List<CoverageGap> gaps) {
        List<CoverageGap> same = gaps.stream().filter(g -> g.stack() == gap.stack()).toList();
        int i = same.indexOf(gap);
        double from = i == 0 ? design.requirement().fromHz() : Math.sqrt(same.get(i - 1).toHz() * gap.fromHz());
        double to = i == same.size() - 1 ? design.requirement().toHz() : Math.sqrt(gap.toHz() * same.get(i + 1).fromHz());
        ResidualResponse response = new ResidualResponse(design);
        ResidualDemand limit = new ResidualDemand(design);
        double[] grid = DesignGrid.of(design, from, to);
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k + 1 < grid.length; k++) {
            for (int part = 0; part <= 4; part++) {
                double f = grid[k] * Math.pow(grid[k + 1] / grid[k], part / 4.0);
                least = Math.min(least, margin(response, limit, gap, f, design.requirement().byVector()));
            }
        }
        return least;
    }

    private static double margin(ResidualResponse response, ResidualDemand limit, CoverageGap gap, double f, boolean vector) {
        double[] re = new double[3];
        double[] im = new double[3];
        response.at(f);
        response.residual(gap.stack(), re, im);
        double least = 300;
        double power = 0;
        for (Axis axis : Axis.ALL) {
            double y = Math.hypot(re[axis.ordinal()], im[axis.ordinal()]);
            power += y * y;
            least = vector ? least : Math.min(least, 20 * Math.log10(limit.limit(axis.ordinal(), f) / y));
        }
        return vector ? 20 * Math.log10(limit.limit(ResidualDemand.VECTOR, f) / Math.sqrt(power)) : least;
    }

    @Test
    void the_gap_of_trial_a_is_where_the_platform_rocks_and_damping_would_close_it() {
        CoverageGap gap = Cures.of(Assessor.assess(design(text("trial-a.yaml")))).get(0);
        assertThat(gap.cause()).isEqualTo("sensor_place");
        assertThat(gap.single()).as("the cross-axis reading alone keeps it open").isEmpty();
        assertThat(gap.together().map(Cure::key)).isEqualTo(Optional.of("sensor_place+cross_axis"));
        assertThat(gap.others()).anySatisfy(c -> {
            assertThat(c.key()).isEqualTo("platform_damping");
            // trial-a-cured.yaml has 12 for 1.8
            assertThat(c.settings().get(0).of()).isEqualTo("platform.springs.corners.damping.x");
            assertThat(c.settings().get(0).holds()).isBetween(7.0, 11.0);
        });
    }

    @Test
    void a_cause_that_alone_is_too_large_is_named_with_the_value_that_just_holds() {
        CoverageGap gap = Cures.of(Assessor.assess(design(changed("ridge-relay.yaml", "latency: 8 us", "latency: 90 us")))).get(0);
        assertThat(gap.cause()).isEqualTo("path");
        assertThat(gap.single()).isPresent();
        assertThat(gap.single().get().settings()).extracting(ValueChange::of).containsExactly("cancellation.path.latency");
        assertThat(gap.single().get().settings().get(0).holds()).isBetween(8e-6, 90e-6);
    }

    @Test
    void the_worst_point_of_the_only_gap_is_that_of_the_verdict() {
        Design design = design(text("trial-a.yaml"));
        ResidualPoint worst = Assessor.assess(design).verdict(quietband.model.Stack.COMBINED).worst();
        CoverageGap gap = Cures.of(Assessor.assess(design)).get(0);
        // both refine the same maximum to better than 1e-4 dB
        assertThat(gap.worst().marginDb()).isCloseTo(worst.marginDb(), within(2e-4));
        assertThat(gap.worst().axis()).isEqualTo(worst.axis());
        assertThat(gap.worst().frequencyHz()).isCloseTo(worst.frequencyHz(), within(0.01));
    }
}
