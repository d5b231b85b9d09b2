package quietband.window;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.AWTError;
import java.awt.GraphicsEnvironment;
import java.awt.HeadlessException;

/** Whether there is something to open a window on. */
final class Display {

    private Display() { }

    /** Skips the test, and says why, where there is none. */
    static void assumeThere() {
        assumeTrue(!Boolean.getBoolean("java.awt.headless"), "skipped: this run is without windows (java.awt.headless)");
        boolean linux = System.getProperty("os.name").startsWith("Linux");
        assumeTrue(!linux || System.getenv("DISPLAY") != null, "skipped: no DISPLAY; start Xvfb, as .ci/run does");
        assumeTrue(opens(), "skipped: the display " + System.getenv("DISPLAY") + " cannot be opened");
    }

    private static boolean opens() {
        try {
            return GraphicsEnvironment.getLocalGraphicsEnvironment().getDefaultScreenDevice() != null;
        } catch (HeadlessException | AWTError | NoClassDefFoundError e) {
            return false;
        }
    }
}
