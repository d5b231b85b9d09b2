package quietband.cli.option;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.function.Function;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import quietband.cli.terminal.InputErrorException;
import quietband.cli.terminal.Version;
import quietband.model.edit.ModelFile;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.page.Report;

/** Options of every command that writes a result. */
public final class OutputOptions {

    /** How the summary is printed. */
    enum Format { TEXT, JSON }

    @Option(names = "--out", paramLabel = "DIR", description = "where the result goes; default: results/<file's name>/<command>")
    private Path out;

    @Option(names = "--format", paramLabel = "text|json", defaultValue = "text",
        description = "how the summary is printed on standard output; default: ${DEFAULT-VALUE}")
    private Format format;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1",
        description = "seed of all randomness, stated in the result; default: ${DEFAULT-VALUE}")
    private long seed;

    @Option(names = "--threads", paramLabel = "N",
        description = "how many threads share the work; changes no figure; default: one per processor")
    private Integer threads;

    public Path directory(Path input, String command) {
        if (out != null) {
            return out;
        }
        Path name = input.toAbsolutePath().normalize().getFileName();
        return Path.of("results", stem(name == null ? "model" : name.toString()), command);
    }

    private static String stem(String name) {
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }

    public long seed() {
        return seed;
    }

    public int threads() {
        if (threads != null && threads < 1) {
            throw new InputErrorException("--threads " + threads + ": at least 1");
        }
        return threads == null ? Runtime.getRuntime().availableProcessors() : threads;
    }

    public Provenance provenance(String command, ModelFile model) {
        return provenance(command, String.valueOf(model.path().getFileName()), model.hash());
    }

    public Provenance provenance(String command, String input, String hash) {
        return new Provenance(command, Version.number(), input, hash, seed);
    }

    /**
     * Writes a result and prints its summary. A place that cannot be written is told of before anything is worked out.
     *
     * @param study gives what is to be written; it may write files of its own first
     */
    public void write(CommandSpec spec, Path target, Provenance from, Function<ResultDirectory, Report> study) {
        try (ResultDirectory directory = ResultDirectory.prepare(target, from.mark())) {
            Report report = study.apply(directory);
            report.writeTo(directory, threads());
            directory.commit();
            PrintWriter printed = spec.commandLine().getOut();
            printed.print(format == Format.JSON ? report.json() : report.text());
            printed.flush();
            Path here = Path.of("").toAbsolutePath();
            Path place = directory.target();
            Path shown = place.startsWith(here) && !place.equals(here) ? here.relativize(place) : place;
            spec.commandLine().getErr().println("Result in " + shown + ": " + String.join(", ", directory.files()));
        }
    }
}
