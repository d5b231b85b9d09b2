package quietband.cli;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import quietband.report.AssessmentPage;

/**
 * Loads what an assessment needs last and what takes longest to load, while the command line and the model are read on the
 * main thread: fonts, what draws charts, digests. What goes wrong here shows when it is needed.
 */
final class Ahead implements Runnable {

    private Ahead() { }

    /** Begins, when the command line is an assessment. */
    static void of(String... args) {
        if (args.length > 1 && args[0].equals("assess")) {
            Thread thread = new Thread(new Ahead(), "ahead");
            thread.setDaemon(true);
            thread.setUncaughtExceptionHandler((t, e) -> { });
            thread.start();
        }
    }

    @Override
    public void run() {
        Version.number();
        try {
            MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
        AssessmentPage.load();
    }
}
