package quietband.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import quietband.model.ModelFile;

/**
 * Begins an assessment on a second thread while the options on its command line are made out: reads the model, and loads what its
 * hash takes. A mere head start: what goes wrong here is done again, and said, where it is needed.
 */
final class Ahead {

    private final Path path;
    private final CompletableFuture<ModelFile> model = new CompletableFuture<>();

    private Ahead(Path path) {
        this.path = path;
    }

    /** No head start. */
    static Ahead none() {
        return new Ahead(null);
    }

    /** Begins, when the command line is an assessment whose model comes first. */
    static Ahead of(String... args) {
        if (args.length < 2 || !args[0].equals("assess") || args[1].startsWith("-")) {
            return none();
        }
        Ahead ahead;
        try {
            ahead = new Ahead(Path.of(args[1]));
        } catch (InvalidPathException e) {
            return none();
        }
        Thread thread = new Thread(ahead::run, "ahead");
        thread.setDaemon(true);
        thread.setUncaughtExceptionHandler((t, e) -> { });
        thread.start();
        return ahead;
    }

    private void run() {
        try {
            model.complete(ModelFile.read(path));
        } finally {
            model.cancel(false);
        }
        Version.number();
        try {
            MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** The model of a file: as read ahead, else read now. */
    ModelFile model(Path file) {
        if (!file.equals(path)) {
            return ModelFile.read(file);
        }
        try {
            return model.join();
        } catch (CancellationException | CompletionException e) {
            return ModelFile.read(file);
        }
    }
}
