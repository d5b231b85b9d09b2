package quietband.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.AWTException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Edits one after another, each seen, also while units are drawn beside; {@code WindowBenchmark} takes the times. */
class EditsSeenOnDisplayTest {

    @BeforeAll
    static void display() {
        Display.assumeThere();
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    @Timeout(120)
    void every_edit_is_painted_before_the_next_is_made(boolean drawing) throws AWTException {
        try (EditingWork work = new EditingWork(drawing)) {
            for (int i = 0; i < 40; i++) {
                work.ready();
                work.edit();
                assertThat(work.shown()).contains(work.typed());
            }
        }
    }
}
