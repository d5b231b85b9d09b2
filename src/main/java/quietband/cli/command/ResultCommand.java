package quietband.cli.command;

import java.nio.file.Path;
import java.util.function.Supplier;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import quietband.cli.option.OutputOptions;
import quietband.report.file.Provenance;
import quietband.report.page.Report;

/** A command that writes a result. */
abstract class ResultCommand {

    @Mixin
    OutputOptions output;
    @Spec
    CommandSpec spec;

    /**
     * Writes what a study found and prints it. A place that cannot be written is told of before anything is worked out.
     *
     * @param input whose name the place has when none is given
     * @param study what is asked, run once
     */
    final void write(Path input, Provenance from, Supplier<Report> study) {
        output.write(spec, output.directory(input, from.command()), from, directory -> study.get());
    }
}
