package quietband.cli.option;

import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import quietband.cli.terminal.InputErrorException;
import quietband.cli.terminal.Version;
import quietband.model.edit.ModelFile;
import quietband.report.file.Provenance;

/** Options of every command that writes a result; see {@code AssessCommand} for why they are no annotations. */
public final class OutputOptions {

    /** How the summary is printed. */
    enum Format { TEXT, JSON }

    private final OptionSpec out = OptionSpec.builder("--out").paramLabel("DIR").type(Path.class)
        .description("where the result goes; default: results/<file's name>/<command>").build();
    private final OptionSpec format = OptionSpec.builder("--format").paramLabel("text|json").type(Format.class).defaultValue("text")
        .description("how the summary is printed on standard output; default: ${DEFAULT-VALUE}").build();
    private final OptionSpec seed = OptionSpec.builder("--seed").paramLabel("N").type(long.class).defaultValue("1")
        .description("seed of all randomness, stated in the result; default: ${DEFAULT-VALUE}").build();
    private final OptionSpec threads = OptionSpec.builder("--threads").paramLabel("N").type(Integer.class)
        .description("how many threads share the work; changes no figure; default: one per processor").build();

    /** The options, for a command to mix in. */
    public CommandSpec spec() {
        return CommandSpec.create().addOption(out).addOption(format).addOption(seed).addOption(threads);
    }

    public Path directory(Path input, String command) {
        Path given = out.getValue();
        if (given != null) {
            return given;
        }
        Path name = input.toAbsolutePath().normalize().getFileName();
        return Path.of("results", stem(name == null ? "model" : name.toString()), command);
    }

    private static String stem(String name) {
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }

    public boolean json() {
        return format.getValue() == Format.JSON;
    }

    public long seed() {
        return seed.<Long>getValue();
    }

    public int threads() {
        Integer given = threads.getValue();
        if (given != null && given < 1) {
            throw new InputErrorException("--threads " + given + ": at least 1");
        }
        return given == null ? Runtime.getRuntime().availableProcessors() : given;
    }

    public Provenance provenance(String command, ModelFile model) {
        return provenance(command, String.valueOf(model.path().getFileName()), model.hash());
    }

    public Provenance provenance(String command, String input, String hash) {
        return new Provenance(command, Version.number(), input, hash, seed());
    }
}
