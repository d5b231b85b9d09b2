package quietband.cli.command;

import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import quietband.cli.option.FrequencyOptions;

/** A command whose result holds tables over frequency. */
abstract class TableCommand extends ResultCommand {

    final FrequencyOptions frequencies = new FrequencyOptions();

    @Mixin
    final CommandSpec frequencyOptions = frequencies.spec();
}
