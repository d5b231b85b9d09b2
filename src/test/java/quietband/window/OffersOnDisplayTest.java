package quietband.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.response.ResidualCurves;

/** Commands that change the design, run from the window, taken over or discarded. */
class OffersOnDisplayTest extends OnDisplay {

    private static final String RATE = "platform.springs.corners.stiffness.";

    private Design design() {
        return opened.window.view().model().design();
    }

    @Test
    void springs_for_a_wanted_corner_are_offered_and_discarded_without_a_trace() {
        String before = opened.window.view().model().text();
        opened.lines.add("70 Hz");
        opened.key(KeyEvent.VK_F5);
        opened.settle();
        assertThat(opened.text("offer")).startsWith("springs: natural frequencies at 70").contains("Worst then");
        opened.key(KeyEvent.VK_TAB);
        opened.key(KeyEvent.VK_SPACE);
        opened.settle();
        assertThat(opened.named("offer").isShowing()).isFalse();
        assertThat(opened.window.view().model().text()).isEqualTo(before);
    }

    @Test
    void springs_that_are_taken_over_reach_the_wanted_corner_and_undo_takes_them_back() {
        String before = opened.window.view().model().text();
        opened.lines.add("70 Hz");
        opened.key(KeyEvent.VK_F5);
        opened.settle();
        opened.key(KeyEvent.VK_SPACE);
        opened.settle();
        // the corner goes with the root of the rate: 16 N/mm give 88 Hz
        assertThat(design().quantities().valueOf(RATE + "x")).isCloseTo(16_000 * (70 / 87.82) * (70 / 87.82), within(300.0));
        assertThat(opened.window.figures().assessment().modes().get(0).frequencyHz()).isCloseTo(70, within(0.5));
        opened.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL);
        opened.settle();
        assertThat(opened.window.view().model().text()).isEqualTo(before);
    }

    @Test
    void a_fit_finds_the_rates_a_measured_residual_was_made_with() throws IOException {
        ResidualCurves truth = ResidualCurves.of(ModelFile.read(model).design(), 60);
        double[][] y = truth.residualPerG()[truth.stacks().size() - 1];
        StringBuilder csv = new StringBuilder("frequency_hz,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g\n");
        for (int i = 0; i < truth.frequencyHz().length; i += 4) {
            csv.append(String.format(Locale.ROOT, "%.9g,%.9g,%.9g,%.9g%n", truth.frequencyHz()[i], y[0][i] * 1e9, y[1][i] * 1e9,
                y[2][i] * 1e9));
        }
        Files.writeString(model.resolveSibling("measured.csv"), csv);
        opened.set("corners stiffness x", "14 N/mm");
        opened.set("corners stiffness z", "19 N/mm");
        opened.lines.add("measured.csv; sensitivity; " + RATE + "x, " + RATE + "z");
        opened.key(KeyEvent.VK_F7);
        opened.settle();
        assertThat(opened.text("offer")).startsWith("fit: 2 numbers found");
        opened.key(KeyEvent.VK_SPACE);
        opened.settle();
        assertThat(design().quantities().valueOf(RATE + "x")).isCloseTo(16_000, within(160.0));
        assertThat(design().quantities().valueOf(RATE + "z")).isCloseTo(17_000, within(170.0));
    }

    @Test
    void the_resonator_is_turned_by_an_offer_and_what_cannot_be_worked_out_is_told() {
        opened.key(KeyEvent.VK_F8);
        opened.settle();
        assertThat(opened.text("offer")).startsWith("orient: turns the resonator by");
        opened.key(KeyEvent.VK_SPACE);
        opened.settle();
        assertThat(opened.window.view().bench().depth()).isEqualTo(1);
        opened.lines.add("70 N");
        opened.key(KeyEvent.VK_F5);
        opened.settle();
        assertThat(opened.text("status")).contains("'70 N' is a force").contains("expected a frequency");
        assertThat(opened.named("offer").isShowing()).isFalse();
    }
}
