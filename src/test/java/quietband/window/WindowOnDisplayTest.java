package quietband.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;
import quietband.model.edit.ModelFile;
import quietband.report.page.Caution;
import quietband.response.verdict.Assessor;

/** A real window under real keys and a real mouse. */
class WindowOnDisplayTest extends OnDisplay {

    private static final String RATE = "platform.springs.corners.stiffness.x";
    private static final String FIELD = "value:" + RATE;

    private double rate() {
        return opened.window.view().model().design().quantities().valueOf(RATE);
    }

    @Test
    void typing_a_value_and_enter_shows_its_effect_and_undo_takes_it_back_by_keys_alone() {
        String before = opened.text("worst");
        opened.focus(FIELD);
        opened.type("9 N/mm");
        opened.key(KeyEvent.VK_ENTER);
        opened.settle();
        assertThat(rate()).isEqualTo(9000);
        assertThat(opened.text("worst")).isNotEqualTo(before);
        assertThat(opened.window.view().ghost()).isPresent();
        opened.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL);
        opened.settle();
        assertThat(rate()).isEqualTo(16_000);
        assertThat(opened.text(FIELD)).isEqualTo("16 N/mm");
        assertThat(opened.text("worst")).isEqualTo(before);
        opened.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT);
        opened.settle();
        assertThat(opened.text(FIELD)).isEqualTo("9 N/mm");
    }

    @Test
    void dragging_the_letter_beside_a_field_turns_its_value_as_one_step() {
        opened.drag("drag:" + RATE, 40);
        opened.settle();
        // 40 px are ten steps of one percent
        assertThat(rate()).isEqualTo(17_600);
        assertThat(opened.window.view().bench().depth()).isEqualTo(1);
    }

    @Test
    void a_bad_entry_is_explained_beside_its_field_and_escape_brings_the_good_one_back() {
        opened.focus(FIELD);
        opened.type("9 N/kg");
        opened.key(KeyEvent.VK_ENTER);
        opened.settle();
        assertThat(opened.text("wrong:platform.springs.corners.stiffness")).contains("is an acceleration").contains("12 N/mm");
        assertThat(opened.text(FIELD)).isEqualTo("9 N/kg");
        assertThat(rate()).isEqualTo(16_000);
        opened.key(KeyEvent.VK_ESCAPE);
        assertThat(opened.text(FIELD)).isEqualTo("16 N/mm");
        assertThat(opened.text("wrong:platform.springs.corners.stiffness")).isEmpty();
    }

    @Test
    void saving_writes_the_file_with_its_comments_and_asks_when_it_changed_on_disk() throws IOException {
        String first = Files.readString(model);
        opened.focus(FIELD);
        opened.key(KeyEvent.VK_UP);
        opened.key(KeyEvent.VK_S, KeyEvent.VK_CONTROL);
        opened.settle();
        String saved = first.replace("{x: 16 N/mm", "{x: 16.16 N/mm");
        assertThat(model).hasContent(saved);
        assertThat(opened.window.frame().getTitle()).doesNotStartWith("\u2022");
        Files.writeString(model, saved + "# by somebody else\n");
        opened.key(KeyEvent.VK_UP);
        opened.choices.add(0);
        opened.key(KeyEvent.VK_S, KeyEvent.VK_CONTROL);
        opened.settle();
        OpenedWindow.await("a question", () -> !opened.asked.isEmpty());
        assertThat(opened.asked.getLast()).contains("changed on disk");
        assertThat(model).content().endsWith("# by somebody else\n");
    }

    @Test
    void what_it_shows_is_what_assess_says_of_the_saved_file() {
        opened.focus(FIELD);
        opened.type("9 N/mm");
        opened.key(KeyEvent.VK_ENTER);
        opened.key(KeyEvent.VK_S, KeyEvent.VK_CONTROL);
        opened.settle();
        assertThat(Assessor.assess(ModelFile.read(model).design()).requirements())
            .isEqualTo(opened.window.figures().assessment().requirements());
        assertThat(opened.text("caution")).isEqualTo(Caution.TEXT);
    }
}
