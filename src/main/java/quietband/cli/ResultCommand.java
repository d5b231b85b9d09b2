package quietband.cli;

import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;

/** A command that writes a result. */
abstract class ResultCommand {

    final OutputOptions output = new OutputOptions();

    @Mixin
    final CommandSpec outputOptions = output.spec();
}
