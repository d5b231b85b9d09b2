package quietband.cli.option;

import picocli.CommandLine.Option;
import quietband.cli.terminal.InputErrorException;
import quietband.filter.FilterTask;
import quietband.filter.analog.PreferredValues;
import quietband.study.filter.NetworkDesign;

/** A lead-lag network of real parts in place of the digital filter. */
public final class AnalogOptions {

    @Option(names = "--analog", paramLabel = "1|2",
        description = "instead of a digital filter: a lead-lag network of one pole or two for each sensor, from parts that are "
            + "made, for the same "
            + "--goal under the same --max-gain; also for a path without sample_rate")
    private Integer poles;

    @Option(names = "--series", paramLabel = "E24|E96", description = "with --analog: resistors to choose from; default: E96")
    private PreferredValues series;

    public boolean asked() {
        if (poles == null && series != null) {
            throw new InputErrorException("--series goes with --analog 1 or --analog 2");
        }
        return poles != null;
    }

    /** Searches for the networks. */
    public NetworkDesign study(FilterTask like) {
        return NetworkDesign.of(new FilterTask(like.design(), like.form(), poles, like.goal(), like.maxGain(), like.grid(),
            like.measured()), series == null ? PreferredValues.E96 : series);
    }
}
