package quietband.cli.option;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import quietband.cli.terminal.InputErrorException;
import quietband.model.Requirement;
import quietband.spectrum.LogGrid;
import quietband.units.Amounts;
import quietband.units.Dimension;
import quietband.units.WrongAmountException;

/** Which frequencies the tables hold; see {@code AssessCommand} for why these are no annotations. */
public final class FrequencyOptions {

    private static final int MOST = 2_000_000;

    private final OptionSpec points = OptionSpec.builder("--points").paramLabel("N").type(Integer.class)
        .description("points of the tables, log-spaced over the requirement's band; default: 400").build();
    private final OptionSpec at = OptionSpec.builder("--at").paramLabel("LIST").type(String.class)
        .description("exactly these frequencies instead, e.g. \"68 Hz, 72.5 Hz\"").build();

    /** The options, for a command to mix in. */
    public CommandSpec spec() {
        return CommandSpec.create().addOption(points).addOption(at);
    }

    public double[] frequencies(Requirement requirement) {
        String listed = at.getValue();
        Integer given = points.getValue();
        if (listed != null) {
            if (given != null) {
                throw new InputErrorException("--points and --at exclude each other; leave one out");
            }
            return list(listed);
        }
        int n = given == null ? 400 : given;
        if (n < 2 || n > MOST) {
            throw new InputErrorException("--points " + n + ": between 2 and " + MOST);
        }
        return LogGrid.between(n, requirement.fromHz(), requirement.toHz());
    }

    private static double[] list(String text) {
        List<Double> values = new ArrayList<>();
        for (String part : text.split(",", -1)) {
            try {
                double f = Amounts.read(part, Dimension.FREQUENCY);
                if (!(f > 0)) {
                    throw new InputErrorException("--at: '" + part.strip() + "' is not above 0 Hz");
                }
                values.add(f);
            } catch (WrongAmountException e) {
                throw new InputErrorException("--at: " + e.getMessage());
            }
        }
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
