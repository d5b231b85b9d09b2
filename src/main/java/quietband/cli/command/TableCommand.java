package quietband.cli.command;

import picocli.CommandLine.Mixin;
import quietband.cli.option.FrequencyOptions;

/** A command whose result holds tables over frequency. */
abstract class TableCommand extends ModelCommand {

    @Mixin
    FrequencyOptions frequencies;
}
