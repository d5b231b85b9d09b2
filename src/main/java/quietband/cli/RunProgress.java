package quietband.cli;

import java.io.PrintWriter;
import quietband.motion.Monitor;

/** Tells how far a long run has come, on standard error of a terminal only; stops with the thread's interruption. */
final class RunProgress implements Monitor {

    private static final long EVERY_NS = 500_000_000L;

    private final PrintWriter err;
    private final String what;
    private final boolean shown = Progress.terminal();
    private long last = System.nanoTime();

    RunProgress(PrintWriter err, String what) {
        this.err = err;
        this.what = what;
    }

    @Override
    public boolean progress(double share) {
        long now = System.nanoTime();
        if (shown && now - last > EVERY_NS) {
            last = now;
            err.print("\r" + what + " " + (int) (100 * share) + " %   ");
            err.flush();
        }
        if (shown && share >= 1) {
            err.print("\r" + " ".repeat(what.length() + 10) + "\r");
            err.flush();
        }
        return !Thread.currentThread().isInterrupted();
    }
}
