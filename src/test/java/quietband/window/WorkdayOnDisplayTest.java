package quietband.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.AWTException;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import quietband.model.edit.ModelFile;
import quietband.window.chart.Theme;

/** What README tells a newcomer to do, by keys alone, and the rest of the menus. */
class WorkdayOnDisplayTest extends OnDisplay {

    @Test
    void springs_are_softened_until_the_clearance_breaks_the_sensor_moved_a_filter_run_and_variants_compared() throws IOException {
        opened.set("corners stiffness x", "2 N/mm");
        assertThat(opened.text("asked:travel")).startsWith("\u2717");
        assertThat(opened.text("verdict")).isEqualTo("DOES NOT HOLD");
        opened.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL);
        opened.set("sensor position x", "0 mm");
        assertThat(opened.window.view().model().design().cancellation().orElseThrow().sensor().position().x()).isZero();
        opened.lines.add("4 flat");
        opened.key(KeyEvent.VK_F6);
        opened.settle();
        assertThat(opened.text("offer")).startsWith("filter: puts 4 taps").contains("Worst then");
        opened.key(KeyEvent.VK_SPACE);
        opened.settle();
        assertThat(opened.window.view().model().text()).contains("taps: {x: [");
        opened.lines.add("filtered");
        opened.key(KeyEvent.VK_D, KeyEvent.VK_CONTROL);
        opened.settle();
        opened.key(KeyEvent.VK_S, KeyEvent.VK_CONTROL);
        opened.settle();
        assertThat(ModelFile.read(model.resolveSibling("ridge-relay-filtered.yaml")).text())
            .isEqualTo(opened.window.view().model().text());
        opened.key(KeyEvent.VK_PAGE_DOWN, KeyEvent.VK_CONTROL);
        opened.settle();
        assertThat(opened.window.view().bench().current()).isZero();
        opened.key(KeyEvent.VK_B, KeyEvent.VK_CONTROL);
        opened.settle();
        assertThat(opened.text("status")).contains("other variants are shown");
        assertThat(opened.window.view().model().text()).as("the first is again what its file holds").isEqualTo(Files.readString(model));
    }

    @Test
    void units_are_drawn_beside_and_the_window_stays_live() {
        opened.key(KeyEvent.VK_F9);
        OpenedWindow.await("first units", () -> opened.window.scattering() != null);
        assertThat(opened.window.scattering().outcome().units()).isGreaterThanOrEqualTo(256);
        assertThat(opened.window.scattering().yieldIn(0).estimate()).isBetween(0.9, 1.0);
        opened.key(KeyEvent.VK_F9);
    }

    @Test
    void the_picture_is_written_as_svg_and_png_and_the_report_as_a_whole_result() throws IOException {
        Path svg = folder.resolve("view.svg");
        Path png = folder.resolve("view.png");
        for (Path to : new Path[] {svg, png}) {
            opened.lines.add(to.toString());
            opened.key(KeyEvent.VK_E, KeyEvent.VK_CONTROL);
            opened.settle();
        }
        String drawn = Files.readString(svg);
        assertThat(drawn.substring(0, 4)).isEqualTo("<svg");
        assertThat(drawn.contains("Ridge relay") && drawn.contains("cancelled") && drawn.contains("worst ")).isTrue();
        assertThat(ImageIO.read(png.toFile()).getWidth()).isEqualTo(2400);
        Path report = folder.resolve("out");
        opened.lines.add(report.toString());
        opened.key(KeyEvent.VK_E, KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT);
        opened.settle();
        assertThat(report.resolve("report.html")).exists();
        assertThat(report.resolve("quietband-result.json")).content().contains("\"assess\"");
    }

    @Test
    void unsaved_work_is_offered_again_after_a_window_that_did_not_end_well() throws AWTException {
        opened.set("mass", "222 g");
        opened.close();
        try (OpenedWindow again = new OpenedWindow(model, folder.resolve("state"), new Theme(true, 150), 1280, 800)) {
            again.choices.add(0);
            OpenedWindow.onEvents(() -> {
                again.window.offerRecovery();
                return true;
            });
            again.settle();
            assertThat(again.asked.getLast()).contains("Unsaved work");
            assertThat(again.window.view().model().design().platform().orElseThrow().mass()).isEqualTo(0.222);
        }
    }

    @Test
    void light_dark_and_scale_change_while_it_is_open_and_every_role_opens() {
        opened.key(KeyEvent.VK_L, KeyEvent.VK_CONTROL);
        for (int i = 0; i < 4; i++) {
            opened.key(KeyEvent.VK_EQUALS, KeyEvent.VK_CONTROL);
        }
        assertThat(opened.window.theme()).isEqualTo(new Theme(true, 200));
        for (int key : new int[] {KeyEvent.VK_1, KeyEvent.VK_2, KeyEvent.VK_3}) {
            opened.key(key, KeyEvent.VK_ALT);
        }
        assertThat(opened.text("caution")).contains("F2");
        opened.key(KeyEvent.VK_F2);
        assertThat(opened.asked.getLast()).contains("can injure").contains("rigid plate");
    }
}
