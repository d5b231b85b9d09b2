package quietband.window;

import java.awt.AWTException;
import java.awt.Toolkit;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;
import quietband.window.bench.EditOrder;
import quietband.window.chart.Theme;

/**
 * Edits in a real window one after another, each timed from the event that makes it to the picture on the screen: the desk has
 * computed, the event thread has painted strip and chart, the display has taken it.
 */
public final class EditingWork implements AutoCloseable {

    private static final String[] PATHS = {"platform.springs.corners.stiffness.x", "platform.springs.corners.stiffness.z",
        "cancellation.sensor.position.x", "cancellation.path.latency", "platform.mass"};
    private static final double[] FIRST = {16, 17, 4, 8, 210};
    private static final String[] UNITS = {"N/mm", "N/mm", "mm", "us", "g"};

    /** Longest wait for the Monte Carlo to be at work, ns: it may have come to its end. */
    private static final long PATIENCE = 2_000_000_000L;

    private final OpenedWindow opened;
    private final boolean drawing;
    private int count;
    private String typed = "";

    /** Opens the window; drawing: a Monte Carlo runs beside. */
    public EditingWork(boolean drawing) throws AWTException {
        this.drawing = drawing;
        opened = new OpenedWindow(Path.of("models/ridge-relay.yaml"), Path.of("target/window-state"), new Theme(false, 100), 1280, 800);
        if (drawing) {
            OpenedWindow.onEvents(() -> {
                opened.window.draw();
                return true;
            });
        }
    }

    /** Waits until a Monte Carlo that is to run beside is at work, not only asked for. */
    public void ready() {
        long end = System.nanoTime() + PATIENCE;
        while (drawing && !opened.window.drawing() && System.nanoTime() < end) {
            LockSupport.parkNanos(1_000_000);
        }
    }

    /**
     * One edit.
     *
     * @return how long it took, ns
     */
    public long edit() {
        int p = count % PATHS.length;
        // a slow walk around the value in force, never the same twice
        typed = String.format(Locale.ROOT, "%.6f %s", FIRST[p] * (1 + 0.1 * Math.sin(0.37 * ++count)), UNITS[p]);
        long serial = opened.window.view().serial();
        long start = System.nanoTime();
        String value = typed;
        OpenedWindow.onEvents(() -> {
            opened.window.submit(EditOrder.set("edit", "", PATHS[p], value, value));
            return true;
        });
        while (opened.window.shownSerial() <= serial) {
            LockSupport.parkNanos(100_000);
        }
        // what the new picture asked to be painted was queued before this
        OpenedWindow.onEvents(() -> {
            Toolkit.getDefaultToolkit().sync();
            return true;
        });
        return System.nanoTime() - start;
    }

    /** What the last edit typed. */
    public String typed() {
        return typed;
    }

    /** The model in force, as text. */
    public String shown() {
        return OpenedWindow.onEvents(() -> opened.window.view().model().text());
    }

    @Override
    public void close() {
        opened.close();
    }
}
