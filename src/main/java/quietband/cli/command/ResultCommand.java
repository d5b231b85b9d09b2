package quietband.cli.command;

import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import quietband.cli.option.OutputOptions;

/** A command that writes a result. */
abstract class ResultCommand {

    final OutputOptions output = new OutputOptions();

    @Mixin
    final CommandSpec outputOptions = output.spec();
}
