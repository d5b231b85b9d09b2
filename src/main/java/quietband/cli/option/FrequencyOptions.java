package quietband.cli.option;

import java.util.Arrays;
import picocli.CommandLine.Option;
import quietband.cli.terminal.InputErrorException;
import quietband.model.Requirement;
import quietband.spectrum.LogGrid;
import quietband.units.Dimension;

/** Which frequencies the tables hold. */
public final class FrequencyOptions {

    private static final int MOST = 2_000_000;

    @Option(names = "--points", paramLabel = "N",
        description = "points of the tables, log-spaced over the requirement's band; default: 400")
    private Integer points;

    @Option(names = "--at", paramLabel = "FREQ,FREQ", description = "exactly these frequencies instead, e.g. \"68 Hz, 72.5 Hz\"")
    private String at;

    public double[] frequencies(Requirement requirement) {
        if (at != null) {
            if (points != null) {
                throw new InputErrorException("--points and --at exclude each other; leave one out");
            }
            return list(at);
        }
        int n = points == null ? 400 : points;
        if (n < 2 || n > MOST) {
            throw new InputErrorException("--points " + n + ": between 2 and " + MOST);
        }
        return LogGrid.between(n, requirement.fromHz(), requirement.toHz());
    }

    private static double[] list(String text) {
        return Arrays.stream(text.split(",", -1)).mapToDouble(part -> {
            double f = OptionAmount.read("--at", part, Dimension.FREQUENCY);
            if (!(f > 0)) {
                throw new InputErrorException("--at: '" + part.strip() + "' is not above 0 Hz");
            }
            return f;
        }).toArray();
    }
}
