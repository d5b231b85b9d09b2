package quietband.identification;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quietband.model.Axis;
import quietband.model.text.CsvTable;

/**
 * A measured response over frequency, read from a CSV file with {@code frequency_hz} and per axis {@code x_ppb_per_g}
 * (sensitivity), {@code x_ratio} or {@code x_db} (transmissibility, 20 log10), optional {@code x_phase_deg} and
 * {@code x_relative_error}.
 *
 * @param kind        what was measured
 * @param frequencyHz rising, above 0
 * @param axes        what was measured per axis; at least one
 */
public record MeasuredResponse(Kind kind, double[] frequencyHz, Map<Axis, Curve> axes) {

    /**
     * What was measured: residual sensitivity of a stack in 1/g; transmissibility of the platform as a ratio; the
     * cancellation's path P as a ratio; weight times P in 1/g.
     */
    public enum Kind {
        SENSITIVITY, TRANSMISSIBILITY, PATH, WEIGHTED_PATH;

        /** Whether it is a sensitivity in 1/g, else a ratio. */
        public boolean perG() {
            return this == SENSITIVITY || this == WEIGHTED_PATH;
        }
    }

    /**
     * One axis; every array has one value a frequency.
     *
     * @param magnitude     1/g, or a ratio
     * @param phase         in rad, when measured
     * @param relativeError uncertainty as a share of the magnitude, when stated
     */
    public record Curve(double[] magnitude, Optional<double[]> phase, Optional<double[]> relativeError) { }

    /** The same numbers taken as something else that comes in the same unit. */
    MeasuredResponse as(Kind other) {
        return new MeasuredResponse(other, frequencyHz, axes);
    }

    private static final List<String> UNITS = List.of("_ppb_per_g", "_ratio", "_db");

    /** Reads a file. @throws quietband.model.ModelException with every problem in it */
    public static MeasuredResponse read(Path file) {
        CsvTable table = CsvTable.read(file);
        table.columns(List.of("frequency_hz"), optional());
        table.check();
        double[] f = table.numbers("frequency_hz");
        for (int i = 0; i < f.length; i++) {
            if (f[i] <= 0 || i > 0 && f[i] <= f[i - 1]) {
                table.tell(table.line(i), "frequency_hz", "'" + table.text(i, "frequency_hz") + "' does not rise",
                    "sort the rows from above 0 Hz, one for each frequency");
            }
        }
        long measured = Axis.ALL.stream().filter(a -> !units(table, a).isEmpty()).count();
        long perG = Axis.ALL.stream().filter(a -> units(table, a).contains(UNITS.get(0))).count();
        boolean twice = Axis.ALL.stream().anyMatch(a -> units(table, a).size() > 1);
        if (measured == 0 || twice || perG > 0 && perG < measured) {
            table.tell(1, "", measured == 0 ? "no axis is measured" : twice ? "an axis is there in two units"
                : "different units are mixed", "one of x_ppb_per_g, x_ratio, x_db is due for each axis, and sensitivities apart "
                + "from ratios");
        }
        if (f.length == 0) {
            table.tell(1, "", "no row below the header", "at least one frequency is due");
        }
        table.check();
        Map<Axis, Curve> axes = new EnumMap<>(Axis.class);
        for (Axis axis : Axis.ALL) {
            for (String unit : units(table, axis)) {
                axes.put(axis, curve(table, axis.letter(), unit));
            }
        }
        table.check();
        return new MeasuredResponse(perG > 0 ? Kind.SENSITIVITY : Kind.TRANSMISSIBILITY, f, axes);
    }

    private static List<String> units(CsvTable table, Axis axis) {
        return UNITS.stream().filter(u -> table.has(axis.letter() + u)).toList();
    }

    private static List<String> optional() {
        List<String> names = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            UNITS.forEach(u -> names.add(axis.letter() + u));
            names.add(axis.letter() + "_phase_deg");
            names.add(axis.letter() + "_relative_error");
        }
        return names;
    }

    private static Curve curve(CsvTable table, String axis, String unit) {
        double[] magnitude = table.numbers(axis + unit);
        for (int i = 0; i < magnitude.length; i++) {
            if (!unit.equals("_db") && magnitude[i] < 0) {
                table.tell(table.line(i), axis + unit, "'" + table.text(i, axis + unit) + "' is below 0",
                    "write the magnitude here and 180 degrees more of phase");
            }
            magnitude[i] = unit.equals("_db") ? StrictMath.pow(10, magnitude[i] / 20)
                : unit.equals("_ratio") ? magnitude[i] : magnitude[i] / 1e9;
        }
        Optional<double[]> error = column(table, axis + "_relative_error");
        error.ifPresent(e -> {
            for (int i = 0; i < e.length; i++) {
                if (e[i] < 0) {
                    table.tell(table.line(i), axis + "_relative_error", "'" + table.text(i, axis + "_relative_error")
                        + "' is below 0", "an uncertainty is at least 0; 0.05 is 5 %");
                }
            }
        });
        Optional<double[]> phase = column(table, axis + "_phase_deg");
        phase.ifPresent(p -> {
            for (int i = 0; i < p.length; i++) {
                p[i] = Math.toRadians(p[i]);
            }
        });
        return new Curve(magnitude, phase, error);
    }

    private static Optional<double[]> column(CsvTable table, String name) {
        return table.has(name) ? Optional.of(table.numbers(name)) : Optional.empty();
    }
}
