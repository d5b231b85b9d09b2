package quietband.cli.command;

import picocli.CommandLine.Mixin;
import quietband.cli.option.OutputOptions;

/** A command that writes a result. */
abstract class ResultCommand {

    @Mixin
    OutputOptions output;
}
