package quietband.cli;

import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import quietband.report.ResultDirectory;

/** What commands say on standard error. */
final class Messages {

    private Messages() { }

    /** Where the result is, relative to the working folder when below it. */
    static void resultAt(CommandSpec spec, ResultDirectory directory) {
        Path here = Path.of("").toAbsolutePath();
        Path target = directory.target();
        Path shown = target.startsWith(here) && !target.equals(here) ? here.relativize(target) : target;
        spec.commandLine().getErr().println("Result in " + shown + ": " + String.join(", ", directory.files()));
    }
}
