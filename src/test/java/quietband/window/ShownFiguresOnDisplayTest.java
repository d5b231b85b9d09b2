package quietband.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.event.KeyEvent;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import quietband.model.edit.ModelFile;
import quietband.report.assess.AssessmentReport;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.spectrum.LogGrid;
import quietband.study.assess.DesignAssessment;
import quietband.window.chart.ChartCursor;

/** What is written in the window, against what {@code assess} writes of the saved file; and what is read from its curves. */
class ShownFiguresOnDisplayTest extends OnDisplay {

    private static final String NUMBER = "(-?[0-9.e+-]+)";

    private static double number(String json, String before) {
        Matcher m = Pattern.compile(before + NUMBER, Pattern.DOTALL).matcher(json);
        assertThat(m.find()).as(before).isTrue();
        return Double.parseDouble(m.group(1));
    }

    private static String dB(double v) {
        return String.format(Locale.ROOT, "%.2f dB", v);
    }

    @Test
    void every_printed_digit_is_that_of_assess_on_the_saved_file() throws IOException {
        opened.set("corners stiffness x", "11 N/mm");
        opened.set("path latency", "9 us");
        opened.key(KeyEvent.VK_S, KeyEvent.VK_CONTROL);
        opened.settle();
        ModelFile saved = ModelFile.read(model);
        String json = AssessmentReport.of(DesignAssessment.of(saved, LogGrid.between(400, 10, 2000), 1, folder.resolve("out")),
            new Provenance("assess", "test", "ridge-relay.yaml", saved.hash(), 1, List.of())).json();
        String combined = "\"stacks\".*?\"combined\".*?\"worst\".*?";
        double hz = number(json, combined + "\"frequency_hz\" *: *");
        double margin = number(json, combined + "\"margin_db\" *: *");
        assertThat(opened.text("worst")).contains(NumberFormat.brief(hz, 4) + " Hz", "axis z, "
            + QuantityText.ppb(1e-9 * number(json, combined + "\"residual_ppb_per_g\" *: *")) + " ppb/g of "
            + QuantityText.ppb(1e-9 * number(json, combined + "\"limit_ppb_per_g\" *: *")), dB(Math.abs(margin)));
        assertThat(opened.text("verdict")).isEqualTo(json.contains("\"requirement_met\" : true") ? "HOLDS" : "DOES NOT HOLD");
        for (String name : new String[] {"residual", "phase_noise", "tones", "jitter"}) {
            double db = number(json, "\"name\" *: *\"" + name + "\".*?\"margin_db\" *: *");
            assertThat(opened.text("asked:" + name)).endsWith(String.format(Locale.ROOT, " %+.2f dB", db));
        }
        for (String name : new String[] {"travel", "sensor_range", "tuning_swing"}) {
            double share = number(json, "\"name\" *: *\"" + name + "\".*?\"used_share\" *: *");
            assertThat(opened.text("asked:" + name)).endsWith(String.format(Locale.ROOT, " %.1f %%", 100 * share));
        }
    }

    private static double hertz(ChartCursor reading) {
        return Double.parseDouble(reading.words().get(0).replaceAll(" .*", ""));
    }

    @Test
    void the_curves_are_read_by_keys_and_by_the_mouse_at_computed_points() {
        opened.key(KeyEvent.VK_LEFT, KeyEvent.VK_ALT);
        ChartCursor reading = opened.window.parts().chart.reading();
        // the computed point next to the worst, 93.59 Hz and 0.03992 ppb/g; points are 1.3 % apart
        assertThat(hertz(reading)).isCloseTo(93.59, within(0.7));
        assertThat(reading.words()).endsWith("limit 0.05").anyMatch(w -> w.matches("combined 0\\.039[89]\\d?"));
        opened.key(KeyEvent.VK_RIGHT, KeyEvent.VK_ALT);
        assertThat(hertz(reading)).isBetween(96.0, 101.0);
        opened.key(KeyEvent.VK_DOWN, KeyEvent.VK_ALT);
        assertThat(reading.words()).isEmpty();
        // the band's middle, sqrt(10 * 2000) Hz, is half way between the chart's sides: 784 of 982 px between 176 and 18
        double middle = (176 + (reading.getWidth() - 194) / 2.0) / reading.getWidth();
        opened.point("residual", middle, 0.5);
        assertThat(hertz(reading)).isBetween(138.0, 145.0);
        opened.point("strip", 0.5, 0.5);
        assertThat(reading.words()).isEmpty();
    }

    @Test
    void a_key_that_the_file_leaves_out_is_found_filled_in_and_emptied_again() {
        String before = opened.window.view().model().text();
        opened.set("modal damping", "0.05");
        assertThat(opened.window.view().model().design().platform().orElseThrow().modalDamping()).isEqualTo(0.05);
        assertThat(opened.named("value:platform.modal_damping").isFocusOwner()).as("the field keeps the focus").isTrue();
        opened.key(KeyEvent.VK_A, KeyEvent.VK_CONTROL);
        opened.key(KeyEvent.VK_DELETE);
        opened.key(KeyEvent.VK_ENTER);
        opened.settle();
        assertThat(opened.window.view().model().text()).isEqualTo(before);
    }
}
