package quietband.cli.option;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import quietband.cli.terminal.InputErrorException;
import quietband.model.Axis;
import quietband.model.Vec;
import quietband.tuning.parts.SpringRequest;
import quietband.units.Dimension;

/** Reads what is wanted of springs from the words of options. */
public final class SpringOptions {

    private static final Pattern REDUCTION = Pattern.compile("(.+?)\\s+at\\s+(.+)");

    private SpringOptions() { }

    /** One frequency for every axis, or one an axis; NaN on an axis that is not named. */
    public static Vec naturalFrequency(String text) {
        if (!text.contains("=")) {
            return Vec.all(OptionAmount.positive("--natural-frequency", text, Dimension.FREQUENCY));
        }
        Vec wanted = Vec.all(Double.NaN);
        for (String part : text.split(",", -1)) {
            String[] sides = part.split("=", 2);
            Axis axis = Axis.of(sides[0].strip());
            if (axis == null || sides.length < 2) {
                throw new InputErrorException("--natural-frequency: '" + part.strip()
                    + "' names no axis; write e.g. \"x=80 Hz, y=80 Hz, z=95 Hz\"");
            }
            if (!Double.isNaN(wanted.get(axis))) {
                throw new InputErrorException("--natural-frequency: " + axis.letter() + " stands twice; keep one");
            }
            wanted = wanted.with(axis, OptionAmount.positive("--natural-frequency", sides[1], Dimension.FREQUENCY));
        }
        return wanted;
    }

    /** Three frequencies, x, y and z; one unit at the end serves all. */
    public static Vec measured(String text) {
        String[] parts = text.split(",", -1);
        if (parts.length != 3) {
            throw new InputErrorException("--measured: '" + text.strip() + "' has " + parts.length
                + " readings; three are due, x, y and z, e.g. "
                + "\"71.2, 69.8, 84.0 Hz\"");
        }
        String unit = parts[2].strip().replaceAll("^[0-9.eE+-]+\\s*", "");
        double[] f = new double[3];
        for (int i = 0; i < 3; i++) {
            boolean bare = parts[i].strip().matches("[0-9.eE+-]+");
            f[i] = OptionAmount.positive("--measured", bare ? parts[i].strip() + " " + unit : parts[i], Dimension.FREQUENCY);
        }
        return Vec.of(f);
    }

    /** "20 dB at 300 Hz". */
    public static SpringRequest.Reduction reduction(String text) {
        Matcher m = REDUCTION.matcher(text.strip());
        if (!m.matches()) {
            throw new InputErrorException("--reduction: '" + text.strip() + "' is not of the form \"20 dB at 300 Hz\"");
        }
        return new SpringRequest.Reduction(OptionAmount.positive("--reduction", m.group(1), Dimension.DECIBEL),
            OptionAmount.positive("--reduction", m.group(2), Dimension.FREQUENCY));
    }
}
