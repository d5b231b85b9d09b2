package quietband.cli.terminal;

import java.io.PrintWriter;
import quietband.motion.run.PassMonitor;

/** Tells how far a long run has come, on standard error of a terminal only; stops with the thread's interruption. Any thread may tell. */
public final class RunProgress implements PassMonitor, AutoCloseable {

    private static final long EVERY_NS = 500_000_000L;

    private final PrintWriter err;
    private final String what;
    private final boolean shown = ProgressLine.terminal();
    private long last = System.nanoTime();
    private int width;

    public RunProgress(PrintWriter err, String what) {
        this.err = err;
        this.what = what;
    }

    @Override
    public synchronized boolean progress(double share) {
        tell((int) (100 * share) + " %");
        if (share >= 1) {
            end();
        }
        return !Thread.currentThread().isInterrupted();
    }

    /** So many designs are judged, of nobody knows how many. */
    public synchronized void judged(long designs) {
        tell(designs + " designs judged");
    }

    private void tell(String far) {
        long now = System.nanoTime();
        if (shown && now - last > EVERY_NS) {
            last = now;
            String line = what + " " + far;
            width = Math.max(width, line.length());
            err.print("\r" + line);
            err.flush();
        }
    }

    @Override
    public void close() {
        end();
    }

    /** Takes the line away. */
    private synchronized void end() {
        if (width > 0) {
            err.print("\r" + " ".repeat(width) + "\r");
            err.flush();
            width = 0;
        }
    }
}
