package quietband.identification.trim;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import quietband.identification.FitException;
import quietband.model.Axis;
import quietband.model.text.CsvTable;

/**
 * One shaker run with phase, read from {@code [serial,]axis,frequency_hz,ppb_per_g,phase_deg[,relative_error]
 * [,weight_ppb_per_g]}: the complex sensitivity along the driven axis' acceleration, exp(+j w t), a lead positive.
 *
 * @param file  name, for messages
 * @param units readings by serial (empty where the file has none) and driven axis, rising in frequency
 */
record TrimRun(String file, Map<String, Map<Axis, List<Reading>>> units) {

    private static final List<String> NEEDED = List.of("axis", "frequency_hz", "ppb_per_g", "phase_deg");
    private static final String SERIAL = "[A-Za-z0-9][A-Za-z0-9._-]{0,63}";
    private static final double SAME = 1e-9;

    /**
     * One reading.
     *
     * @param line          in the file
     * @param frequencyHz   above 0
     * @param re            real part of the sensitivity, 1/g
     * @param im            imaginary part, 1/g
     * @param relativeError one standard uncertainty of each, as a share of the magnitude; NaN where not stated
     * @param weightPerG    weight of the cancellation of this axis in the run, 1/g; NaN where not stated
     */
    record Reading(int line, double frequencyHz, double re, double im, double relativeError, double weightPerG) {

        double size() {
            return Math.hypot(re, im);
        }
    }

    /** Reads a file. @throws quietband.model.ModelException with every problem in it */
    static TrimRun read(Path path) {
        CsvTable table = CsvTable.read(path);
        table.columns(NEEDED, List.of("serial", "relative_error", "weight_ppb_per_g"));
        if (table.size() == 0) {
            table.tell(1, "", "no row below the header", "readings of all three axes are due");
        }
        Map<String, Map<Axis, List<Reading>>> units = new LinkedHashMap<>();
        for (int row = 0; row < table.size(); row++) {
            String serial = table.text(row, "serial");
            if (table.has("serial") && !serial.matches(SERIAL)) {
                table.tell(table.line(row), "serial", serial.isEmpty() ? "is empty" : "'" + serial + "' cannot name a folder",
                    "use letters, digits, point, hyphen and underscore");
            }
            Axis axis = Axis.of(table.text(row, "axis"));
            if (axis == null) {
                table.tell(table.line(row), "axis", "'" + table.text(row, "axis") + "' is no axis", "write x, y or z");
            }
            Reading r = reading(table, row);
            if (axis != null) {
                units.computeIfAbsent(serial, s -> new EnumMap<>(Axis.class)).computeIfAbsent(axis, a -> new ArrayList<>()).add(r);
            }
        }
        units.forEach((serial, axes) -> axes.values().forEach(rows -> sort(table, rows)));
        table.check();
        return new TrimRun(String.valueOf(path.getFileName()), units);
    }

    private static Reading reading(CsvTable table, int row) {
        double f = table.number(row, "frequency_hz");
        double size = table.number(row, "ppb_per_g") / 1e9;
        double phase = Math.toRadians(table.number(row, "phase_deg"));
        positive(table, row, "frequency_hz", f, "frequencies are above 0 Hz");
        if (size < 0) {
            table.tell(table.line(row), "ppb_per_g", "'" + table.text(row, "ppb_per_g") + "' is below 0",
                "write the magnitude here and 180 degrees more of phase");
        }
        double error = Double.NaN;
        if (table.has("relative_error")) {
            error = table.number(row, "relative_error");
            positive(table, row, "relative_error", error, "one standard uncertainty is above 0; 0.01 is 1 %");
        }
        double weight = table.has("weight_ppb_per_g") ? table.number(row, "weight_ppb_per_g") / 1e9 : Double.NaN;
        return new Reading(table.line(row), f, size * StrictMath.cos(phase), size * StrictMath.sin(phase), error, weight);
    }

    private static void positive(CsvTable table, int row, String column, double value, String advice) {
        if (value <= 0) {
            table.tell(table.line(row), column, "'" + table.text(row, column) + "' is not above 0", advice);
        }
    }

    private static void sort(CsvTable table, List<Reading> rows) {
        rows.sort(Comparator.comparingDouble(Reading::frequencyHz).thenComparingInt(Reading::line));
        for (int i = 1; i < rows.size(); i++) {
            if (rows.get(i).frequencyHz() == rows.get(i - 1).frequencyHz()) {
                table.tell(rows.get(i).line(), "frequency_hz", "the same frequency stands in line " + rows.get(i - 1).line(),
                    "keep one reading for each axis and frequency");
            }
        }
    }

    /** Refuses what cannot be a pair of runs on the same units. */
    static void check(TrimRun off, TrimRun on) {
        for (TrimRun run : List.of(off, on)) {
            TrimRun other = run.equals(off) ? on : off;
            for (String serial : run.units().keySet()) {
                if (!other.units().containsKey(serial)) {
                    throw new FitException((serial.isEmpty() ? run.file() + " has no serial column and " + other.file() + " has one"
                        : "serial " + serial + " is in " + run.file() + " and not in " + other.file())
                        + "; give both runs of every unit, with the cancellation off and on");
                }
            }
        }
        off.units().forEach((serial, axes) -> {
            String unit = serial.isEmpty() ? "" : "serial " + serial + ", ";
            for (Axis axis : Axis.ALL) {
                pair(off, on, unit + "axis " + axis.letter(), axes.get(axis), on.units().get(serial).get(axis));
            }
        });
    }

    private static void pair(TrimRun off, TrimRun on, String what, List<Reading> a, List<Reading> b) {
        if (a == null || b == null) {
            throw new FitException(what + " is not in " + (a == null ? off.file() : on.file()) + "; a trim needs a run along each of "
                + "x, y and z, because every sensor reads a little of every axis");
        }
        for (int i = 0; i < Math.max(a.size(), b.size()); i++) {
            boolean same = i < a.size() && i < b.size()
                && Math.abs(a.get(i).frequencyHz() / b.get(i).frequencyHz() - 1) < SAME;
            if (!same) {
                throw new FitException(what + ": the runs are at different frequencies: " + at(off, a, i) + ", " + at(on, b, i)
                    + "; both runs must have the same ones");
            }
        }
        boolean stated = !Double.isNaN(a.get(0).relativeError());
        if (stated == Double.isNaN(b.get(0).relativeError())) {
            throw new FitException((stated ? off : on).file() + " states relative_error and " + (stated ? on : off).file()
                + " does not; state it in both files, or in none");
        }
    }

    private static String at(TrimRun run, List<Reading> rows, int i) {
        return run.file() + (i < rows.size() ? " line " + rows.get(i).line() + " has " + rows.get(i).frequencyHz() + " Hz"
            : " has no more");
    }
}
