package quietband.filter.allowed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.model.Axis;
import quietband.model.edit.ModelFile;
import quietband.response.ResidualCurves;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;

/** Allowed errors against a whole assessment with the error put there. */
class ErrorBoundsTest {

    private static final ModelFile MAIN = ModelFile.read(Path.of("models/ridge-relay.yaml"));

    private static ErrorBounds room(ModelFile file) {
        return ErrorBounds.of(file.design(), ResidualCurves.of(file.design(), 400).frequencyHz()).orElseThrow();
    }

    private static double margin(ModelFile file) {
        Assessment a = Assessor.assess(file.design());
        return a.verdict(a.fullest()).worst().marginDb();
    }

    /** At each end the margin is 0: the grid's points are 1.3 % apart, so a flat maximum between them is met to 0.01 dB. */
    @ParameterizedTest
    @ValueSource(strings = {"gain", "phase", "delay"})
    void at_either_end_the_worst_point_is_on_the_limit(String kind) {
        ErrorBounds room = room(MAIN);
        List<ErrorBounds.Span> spans = kind.equals("gain") ? room.gain() : kind.equals("phase") ? room.phase() : room.delay();
        for (Axis axis : Axis.ALL) {
            ErrorBounds.Span s = spans.get(axis.ordinal());
            String path = "cancellation.error." + kind + "." + axis.letter();
            assertThat(s.kept()).isTrue();
            assertThat(s.now()).isEqualTo(MAIN.design().quantities().valueOf(path));
            assertThat(margin(MAIN.withNumber(path, s.low()))).as(path + " low").isCloseTo(0, within(0.01));
            assertThat(margin(MAIN.withNumber(path, s.high()))).as(path + " high").isCloseTo(0, within(0.01));
        }
    }

    @Test
    void by_vector_the_sum_over_the_drives_counts() {
        ModelFile wide = MAIN.withValue("requirement.residual", "[{frequency: 10 Hz, limit: 0.1 ppb/g}]");
        ModelFile vector = wide.withValue("requirement.by", "vector");
        ErrorBounds.Span s = room(vector).gain().get(2);
        assertThat(margin(vector.withNumber("cancellation.error.gain.z", s.high()))).isCloseTo(0, within(0.01));
        assertThat(s.high()).isLessThan(room(wide).gain().get(2).high());
    }

    @Test
    void a_design_that_no_such_value_saves_has_no_room_and_one_without_correction_has_no_answer() {
        ModelFile hard = MAIN.withValue("requirement.residual", "[{frequency: 10 Hz, limit: 0.001 ppb/g}]");
        assertThat(room(hard).gain()).noneMatch(ErrorBounds.Span::open);
        assertThat(ErrorBounds.of(ModelFile.read(Path.of("models/platform-only.yaml")).design(), new double[] {100})).isEmpty();
    }
}
