package quietband.cli.terminal;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import quietband.motion.run.PassMonitor;

/** Tells how far a long run has come, on standard error of a terminal only; stops with the thread's interruption. Any thread may tell. */
public final class RunProgress implements PassMonitor, AutoCloseable {

    private static final long EVERY_NS = 200_000_000L;

    private final PrintWriter err;
    private final String what;
    private final boolean shown = terminal();
    private final long start = System.nanoTime();
    private long last = start;
    private int width;

    public RunProgress(PrintWriter err, String what) {
        this.err = err;
        this.what = what;
    }

    @Override
    public synchronized boolean progress(double share) {
        tell(what + " " + (int) (100 * share) + " %");
        if (share >= 1) {
            close();
        }
        return !Thread.currentThread().isInterrupted();
    }

    /** So many designs are judged, of nobody knows how many. */
    public synchronized void judged(long designs) {
        tell(what + " " + designs + " designs judged");
    }

    /** So many units are done, of all. */
    public synchronized void units(long done, long all) {
        double left = (System.nanoTime() - start) / 1e9 / Math.max(1, done) * (all - done);
        tell(String.format(Locale.ROOT, "%d of %d units, %.0f s left   ", done, all, left));
    }

    private void tell(String line) {
        long now = System.nanoTime();
        if (shown && now - last > EVERY_NS) {
            last = now;
            width = Math.max(width, line.length());
            err.print("\r" + line);
            err.flush();
        }
    }

    /** Whether standard error is a terminal. */
    private static boolean terminal() {
        Path link = Path.of("/proc/self/fd/2");
        try {
            String to = Files.isSymbolicLink(link) ? Files.readSymbolicLink(link).toString() : "";
            return to.startsWith("/dev/pts/") || to.startsWith("/dev/tty");
        } catch (IOException e) {
            return false;
        }
    }

    /** Takes the line away. */
    @Override
    public synchronized void close() {
        if (width > 0) {
            err.print("\r" + " ".repeat(width) + "\r");
            err.flush();
            width = 0;
        }
    }
}
