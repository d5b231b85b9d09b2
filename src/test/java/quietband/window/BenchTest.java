package quietband.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import quietband.model.ModelException;
import quietband.model.ModelFile;
import quietband.platform.SingularPlatformException;

/** The state behind the window, without a window. */
class BenchTest {

    private static final String RATE = "platform.springs.corners.stiffness.x";
    private static final Path MAIN = Path.of("models/ridge-relay.yaml");

    private final Bench start = Bench.of(ModelFile.read(MAIN));

    @Test
    void an_edit_changes_the_value_and_keeps_every_comment() {
        Bench edited = start.edit("rate", "", RATE, "9 N/mm");
        assertThat(edited.model().design().quantities().valueOf(RATE)).isEqualTo(9000);
        assertThat(edited.model().text()).isEqualTo(start.model().text().replace("stiffness: {x: 16 N/mm", "stiffness: {x: 9 N/mm"));
        assertThat(edited.unsaved()).isTrue();
        assertThat(start.unsaved()).isFalse();
    }

    @Test
    void undo_and_redo_go_through_every_step_and_a_new_edit_ends_what_could_be_redone() {
        Bench bench = start;
        List<String> texts = new ArrayList<>(List.of(start.model().text()));
        for (int i = 1; i <= 30; i++) {
            bench = bench.edit("step " + i, "", RATE, (10 + i) + " N/mm");
            texts.add(bench.model().text());
        }
        for (int i = 29; i >= 0; i--) {
            bench = bench.undo();
            assertThat(bench.model().text()).isEqualTo(texts.get(i));
        }
        assertThat(bench.undoable()).isEmpty();
        assertThat(bench.unsaved()).isFalse();
        for (int i = 1; i <= 30; i++) {
            bench = bench.redo();
            assertThat(bench.model().text()).isEqualTo(texts.get(i));
        }
        assertThat(bench.undo().edit("other", "", "platform.mass", "200 g").redoable()).isEmpty();
    }

    @Test
    void edits_of_one_gesture_are_one_step() {
        Bench bench = start;
        for (int i = 0; i < 20; i++) {
            bench = bench.edit("drag", "drag 7", RATE, (16 - i * 0.1) + " N/mm");
        }
        assertThat(bench.depth()).isEqualTo(1);
        assertThat(bench.undo().model().text()).isEqualTo(start.model().text());
        assertThat(bench.undo().redo().model().text()).isEqualTo(bench.model().text());
    }

    @Test
    void a_bad_value_or_a_platform_that_floats_is_refused() {
        assertThatThrownBy(() -> start.edit("rate", "", RATE, "9 N/kg")).isInstanceOf(ModelException.class)
            .hasMessageContaining("acceleration");
        Bench soft = start.edit("x", "", "platform.springs.corners.stiffness", "{x: 16 N/mm, y: 16 N/mm, z: 17 N/mm}");
        assertThatThrownBy(() -> soft.edit("rate", "", "platform.springs.corners.stiffness", "0 N/mm"))
            .isInstanceOf(SingularPlatformException.class);
    }

    @Test
    void variants_are_kept_switched_dropped_and_brought_back() {
        Bench bench = start.edit("rate", "", RATE, "9 N/mm").keep("softer", Path.of("models/ridge-relay-softer.yaml"));
        assertThat(bench.variants()).extracting(Variant::name).containsExactly("as filed", "softer");
        Bench further = bench.edit("mass", "", "platform.mass", "200 g").look(0);
        assertThat(further.model().text()).as("what was unsaved went with the copy").isEqualTo(start.model().text());
        assertThat(bench.undo().model().text()).isEqualTo(start.edit("rate", "", RATE, "9 N/mm").model().text());
        assertThat(further.undo().current()).as("undoing shows where it happens").isEqualTo(1);
        Bench dropped = further.drop(1);
        assertThat(dropped.variants()).hasSize(1);
        assertThat(dropped.undo().variants()).hasSize(2);
        assertThatThrownBy(() -> bench.keep("softer", MAIN)).hasMessageContaining("choose another name");
    }

    /** Random edits, undo and redo against a list that simply keeps every text. */
    @Test
    void any_order_of_edits_undo_and_redo_gives_what_a_replay_gives() {
        String[] paths = {RATE, "platform.springs.corners.damping.z", "platform.mass", "cancellation.error.delay",
            "cancellation.sensor.position.x", "oscillator.resonator.sensitivity.y", "cancellation.path.latency"};
        String[] units = {"N/mm", "N*s/m", "g", "us", "mm", "ppb/g", "us"};
        SplittableRandom random = new SplittableRandom(10);
        List<String> texts = new ArrayList<>(List.of(start.model().text()));
        int at = 0;
        Bench bench = start;
        for (int n = 0; n < 120; n++) {
            int kind = random.nextInt(10);
            if (kind < 5) {
                int p = random.nextInt(paths.length);
                String before = bench.model().text();
                bench = bench.edit("edit", "", paths[p], (1 + random.nextInt(1, 9999) / 100.0) + " " + units[p]);
                if (!bench.model().text().equals(before)) {
                    texts.subList(at + 1, texts.size()).clear();
                    texts.add(bench.model().text());
                    at++;
                }
            } else if (kind < 8) {
                bench = bench.undo();
                at = Math.max(0, at - 1);
            } else {
                bench = bench.redo();
                at = Math.min(texts.size() - 1, at + 1);
            }
            assertThat(bench.model().text()).isEqualTo(texts.get(at));
            assertThat(bench.depth()).isEqualTo(at);
        }
    }
}
