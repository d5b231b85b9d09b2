package quietband.window.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import quietband.model.edit.FileValue;
import quietband.model.edit.ModelFile;
import quietband.model.text.ModelException;
import quietband.platform.SingularPlatformException;
import quietband.window.values.TypedAmount;

/** The state behind the window, without a window. */
class EditingBenchTest {

    private static final String RATE = "platform.springs.corners.stiffness.x";
    private static final Path MAIN = Path.of("models/ridge-relay.yaml");

    private final EditingBench start = EditingBench.of(ModelFile.read(MAIN));

    @Test
    void an_edit_changes_the_value_and_keeps_every_comment() {
        EditingBench edited = start.edit("rate", "", RATE, "9 N/mm");
        assertThat(edited.model().design().quantities().valueOf(RATE)).isEqualTo(9000);
        assertThat(edited.model().text()).isEqualTo(start.model().text().replace("stiffness: {x: 16 N/mm", "stiffness: {x: 9 N/mm"));
        assertThat(edited.unsaved()).isTrue();
        assertThat(start.unsaved()).isFalse();
    }

    @Test
    void undo_and_redo_go_through_every_step_and_a_new_edit_ends_what_could_be_redone() {
        EditingBench bench = start;
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
        EditingBench bench = start;
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
        EditingBench soft = start.edit("x", "", "platform.springs.corners.stiffness", "{x: 16 N/mm, y: 16 N/mm, z: 17 N/mm}");
        assertThatThrownBy(() -> soft.edit("rate", "", "platform.springs.corners.stiffness", "0 N/mm"))
            .isInstanceOf(SingularPlatformException.class);
    }

    @Test
    void variants_are_kept_switched_dropped_and_brought_back() {
        EditingBench bench = start.edit("rate", "", RATE, "9 N/mm").keep("softer", Path.of("models/ridge-relay-softer.yaml"));
        assertThat(bench.variants()).extracting(DesignVariant::name).containsExactly("saved", "softer");
        EditingBench further = bench.edit("mass", "", "platform.mass", "200 g").look(0);
        assertThat(further.model().text()).as("what was unsaved went with the copy").isEqualTo(start.model().text());
        assertThat(bench.undo().model().text()).isEqualTo(start.edit("rate", "", RATE, "9 N/mm").model().text());
        assertThat(further.undo().current()).as("undoing shows where it happens").isEqualTo(1);
        EditingBench dropped = further.drop(1);
        assertThat(dropped.variants()).hasSize(1);
        assertThat(dropped.undo().variants()).hasSize(2);
        assertThatThrownBy(() -> bench.keep("softer", MAIN)).hasMessageContaining("choose another name");
    }

    /**
     * Random edits, undo and redo against a list that simply keeps every text. A step keeps the stretch it changed, some hundred bytes:
     * what the steps hold beside that list stays far below one model as read for each of them. {@code -Dwindow.edits} sets how many.
     */
    @Test
    void any_order_of_edits_undo_and_redo_gives_what_a_replay_gives_and_holds_little() {
        SplittableRandom random = new SplittableRandom(10);
        List<String> texts = new ArrayList<>(List.of(start.model().text()));
        long before = used();
        int at = 0;
        EditingBench bench = start;
        for (int n = 0; n < Integer.getInteger("window.edits", 200); n++) {
            int kind = random.nextInt(10);
            if (kind < 5) {
                EditingBench edited = changed(bench, random);
                if (!edited.model().text().equals(bench.model().text())) {
                    texts.subList(at + 1, texts.size()).clear();
                    texts.add(edited.model().text());
                    at++;
                }
                bench = edited;
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
        long held = used() - before - texts.stream().mapToLong(String::length).sum();
        assertThat(held).as("bytes beside the texts").isLessThan(8L << 20);
        assertThat(bench.undoable()).as("kept until here").isNotNull();
    }

    /** Any value of the model moved by some steps; as it was where that is refused. */
    private static EditingBench changed(EditingBench bench, SplittableRandom random) {
        List<FileValue> numbers = bench.model().values().stream()
            .filter(v -> v.dimension().isPresent() && TypedAmount.of(v.text()).isPresent())
            .toList();
        FileValue v = numbers.get(random.nextInt(numbers.size()));
        String typed = TypedAmount.of(v.text()).orElseThrow().moved(random.nextInt(-15, 16)).text();
        try {
            return bench.edit("edit", "", v.path(), typed);
        } catch (ModelException | SingularPlatformException e) {
            return bench;
        }
    }

    private static long used() {
        for (int i = 0; i < 3; i++) {
            System.gc();
        }
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }
}
