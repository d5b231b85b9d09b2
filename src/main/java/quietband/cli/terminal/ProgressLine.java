package quietband.cli.terminal;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** A line with the time left, on standard error and only when that is known to be a terminal. */
public final class ProgressLine {

    private static final long EVERY_NS = 200_000_000;

    private final PrintWriter err;
    private final boolean shown;
    private final long all;
    private final long start = System.nanoTime();
    private long last = start;

    public ProgressLine(PrintWriter err, long all) {
        this.err = err;
        this.all = all;
        this.shown = terminal();
    }

    /** Whether standard error is a terminal. */
    static boolean terminal() {
        Path link = Path.of("/proc/self/fd/2");
        try {
            String to = Files.isSymbolicLink(link) ? Files.readSymbolicLink(link).toString() : "";
            return to.startsWith("/dev/pts/") || to.startsWith("/dev/tty");
        } catch (IOException e) {
            return false;
        }
    }

    /** So many are done. */
    public void at(long done) {
        long now = System.nanoTime();
        if (shown && now - last > EVERY_NS) {
            last = now;
            double left = (now - start) / 1e9 / Math.max(1, done) * (all - done);
            err.print(String.format(Locale.ROOT, "\r%d of %d units, %.0f s left   ", done, all, left));
            err.flush();
        }
    }

    /** Takes the line away. */
    public void end() {
        if (shown && last > start) {
            err.print("\r" + " ".repeat(60) + "\r");
            err.flush();
        }
    }
}
