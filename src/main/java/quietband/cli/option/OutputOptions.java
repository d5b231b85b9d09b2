package quietband.cli.option;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
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

    private static final int MOST_THREADS = 256;

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
        if (threads != null && (threads < 1 || threads > MOST_THREADS)) {
            throw new InputErrorException("--threads " + threads + ": between 1 and " + MOST_THREADS);
        }
        return threads == null ? Math.min(MOST_THREADS, Runtime.getRuntime().availableProcessors()) : threads;
    }

    public Provenance provenance(String command, ModelFile model) {
        return Provenance.of(command, Version.number(), model, seed);
    }

    public Provenance provenance(String command, String input, String hash) {
        return new Provenance(command, Version.number(), input, hash, seed, List.of());
    }

    /**
     * Writes a result and prints its summary. A place that cannot be written is told of before anything is worked out.
     *
     * @param study gives what is to be written; it may write files of its own first
     */
    public void write(CommandSpec spec, Path target, Provenance from, Function<ResultDirectory, Report> study) {
        try (ResultDirectory directory = ResultDirectory.prepare(target, from.mark(), read(spec, from))) {
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
            if (!directory.kept().isEmpty()) {
                spec.commandLine().getErr().println("Edited since the last run, kept beside it: "
                    + String.join(", ", directory.kept().stream().map(Path::toString).toList()));
            }
        }
    }

    /** The files a result is made from: those that the command line names, and those they refer to. */
    private static List<Path> read(CommandSpec spec, Provenance from) {
        List<Path> read = new ArrayList<>(from.read());
        for (ArgSpec arg : spec.commandLine().getParseResult().matchedArgs()) {
            boolean output = arg instanceof OptionSpec option && option.longestName().equals("--out");
            Object value = output ? null : arg.getValue();
            (value instanceof Iterable<?> several ? several : Collections.singleton(value)).forEach(v -> {
                if (v instanceof Path path) {
                    read.add(path);
                }
            });
        }
        return read;
    }
}
