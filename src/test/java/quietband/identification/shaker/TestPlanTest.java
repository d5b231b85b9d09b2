package quietband.identification.shaker;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.identification.shaker.TestPlan.Step;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.platform.Assembly;
import quietband.platform.PlatformMotion;
import quietband.units.StandardGravity;

/** What a test plan asks for, held against travel and ranges by other roads. */
class TestPlanTest {

    private static Design design(String model) {
        return ModelFile.read(Path.of(model)).design();
    }

    @ParameterizedTest
    @ValueSource(strings = {"models/ridge-relay.yaml", "models/trial-a.yaml", "models/rough-ride.yaml", "models/platform-only.yaml"})
    void no_dwell_leaves_half_of_the_clearance_or_of_the_sensors_range(String model) {
        Design design = design(model);
        // 50 g and a long stroke are asked for, so that the model is what limits
        TestPlan plan = TestPlan.of(design, 50, 1, 10e6);
        PlatformMotion motion = new PlatformMotion(new Assembly(design.platform().orElseThrow()));
        double[] re = new double[9];
        double[] im = new double[9];
        double tightest = 0;
        for (Step s : plan.steps()) {
            motion.at(s.frequencyHz());
            int j = s.axis().ordinal();
            motion.displacementOf(design.platform().orElseThrow().centreOfGravity(), re, im);
            for (int i = 0; i < 3 && design.platform().orElseThrow().clearance().isPresent(); i++) {
                double peak = Math.hypot(re[3 * i + j], im[3 * i + j]) * StandardGravity.M_PER_S2 * s.peakG();
                double used = peak / design.platform().orElseThrow().clearance().get().get(i);
                assertThat(used).as(s.toString()).isLessThanOrEqualTo(0.5);
                tightest = Math.max(tightest, used);
            }
            design.cancellation().filter(c -> c.sensor().onPlatform()).ifPresent(c -> {
                motion.accelerationOf(c.sensor().position(), re, im);
                for (int i = 0; i < 3; i++) {
                    // cross-axis sensitivity of some percent is not in this road
                    assertThat(Math.hypot(re[3 * i + j], im[3 * i + j]) * s.peakG()).as(s.toString())
                        .isLessThanOrEqualTo(0.53 * c.sensor().rangeG().get(i));
                }
            });
            assertThat(s.startG()).isCloseTo(s.peakG() / 4, within(1e-12));
        }
        // and the plan is no timid one: something is used to about half, the centre travels a good part of that
        assertThat(plan.steps()).anyMatch(s -> s.peakG() < 49 && !s.limitedBy().isEmpty());
        assertThat(tightest).isGreaterThan(design.platform().orElseThrow().clearance().isPresent() ? 0.1 : -1);
    }

    @Test
    void sidebands_to_expect_are_those_of_the_bare_resonator_when_bolted_down() {
        Design design = design("models/bolted-down.yaml");
        TestPlan plan = TestPlan.of(design, 1, 0.005, 10e6);
        Step first = plan.steps().get(0);
        double g = Math.abs(design.oscillator().resonator().mountedSensitivityPerG().x());
        assertThat(first.axis()).isEqualTo(Axis.X);
        assertThat(first.frequencyHz()).isEqualTo(10);
        // 20 log10(G a f0/(2 f)); the support at 6.2 kHz adds nothing at 10 Hz
        assertThat(first.withoutDbc()).isCloseTo(20 * Math.log10(g * first.peakG() * 10e6 / 20), within(0.001));
        assertThat(first.withDbc()).isNaN();
        // 200 cycles at 10 Hz
        assertThat(first.seconds()).isEqualTo(20);
    }

    @Test
    void a_short_stroke_limits_low_frequencies_as_a_sine_does() {
        TestPlan plan = TestPlan.of(design("models/bolted-down.yaml"), 1, 0.001, 10e6);
        // 1 mm at 10 Hz is (2 pi 10)^2 0.001/9.80665 = 0.4026 g, rounded down to two digits
        assertThat(plan.steps().get(0).peakG()).isCloseTo(0.40, within(1e-9));
        assertThat(plan.steps().get(0).limitedBy()).isEqualTo("shaker stroke");
        assertThat(String.format(Locale.ROOT, "%.3f", plan.steps().get(10).peakG())).isEqualTo("1.000");
    }

    @Test
    void resonances_within_the_band_are_among_the_frequencies() {
        TestPlan plan = TestPlan.of(design("models/trial-a.yaml"), 1, 0.005, 10e6);
        assertThat(plan.resonances()).isNotEmpty().allSatisfy(f -> assertThat(plan.steps())
            .anyMatch(s -> Math.abs(s.frequencyHz() / f - 1) < 0.02));
    }
}
