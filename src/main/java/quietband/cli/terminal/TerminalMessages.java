package quietband.cli.terminal;

import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import quietband.report.file.ResultDirectory;

/** What commands say on standard error. */
public final class TerminalMessages {

    private TerminalMessages() { }

    /** Where the result is, relative to the working folder when below it. */
    public static void resultAt(CommandSpec spec, ResultDirectory directory) {
        Path here = Path.of("").toAbsolutePath();
        Path target = directory.target();
        Path shown = target.startsWith(here) && !target.equals(here) ? here.relativize(target) : target;
        spec.commandLine().getErr().println("Result in " + shown + ": " + String.join(", ", directory.files()));
        if (!directory.kept().isEmpty()) {
            spec.commandLine().getErr().println("Edited since the last run, kept beside it: "
                + String.join(", ", directory.kept().stream().map(Path::toString).toList()));
        }
    }
}
