package quietband.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;

/**
 * Runs what is run most, for the build to note which classes that takes: {@link FastStart} starts with them loaded. Given a model
 * file and a folder for the results, which nobody needs.
 */
final class Rehearsal {

    private Rehearsal() { }

    /** Runs all of it; {@code args} are the model file and the folder for results. */
    public static void main(String[] args) {
        // as the second process, whose first is gone, which is of no consequence here
        System.setProperty(FastStart.AGAIN, "0");
        FastStart.again(() -> { }, args);
        System.clearProperty(FastStart.AGAIN);
        for (List<String> line : lines(args[0], Path.of(args[1]))) {
            Quietband.run(new PrintWriter(new StringWriter()), new PrintWriter(new StringWriter()), line.toArray(new String[0]));
        }
    }

    private static List<List<String>> lines(String model, Path results) {
        List<String> assess = List.of("assess", model, "--out", results.resolve("assess").toString());
        // the second time over a result, as whoever judges a design again and again
        return List.of(assess, assess,
            List.of("tolerance", model, "--units", "300", "--out", results.resolve("tolerance").toString()),
            List.of("compare", model, model, "--out", results.resolve("compare").toString()));
    }
}
