package quietband.identification.shaker;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.model.Axis;
import quietband.model.text.CsvTable;

/**
 * Reads runs on the shaker: {@code axis,frequency_hz,peak_g} (or {@code rms_g}){@code ,sideband_dbc}, or
 * {@code axis,sense,output_hz}, or both kinds of rows with the other kind's cells empty.
 */
public final class ShakerFile {

    private static final double MOST_DB = 1000;
    private static final List<String> OPTIONAL = List.of("serial", "frequency_hz", "peak_g", "rms_g", "sideband_dbc", "phase_deg",
        "floor_dbc", "uncertainty_db", "cross_x_g", "cross_y_g", "cross_z_g", "sense", "output_hz", "time_s");
    private static final List<String> UP = List.of("+", "+1", "1", "up", "+1 g", "plus");
    private static final List<String> DOWN = List.of("-", "-1", "down", "-1 g", "minus");
    private static final double ROOT_TWO = Math.sqrt(2);

    private final CsvTable table;

    private ShakerFile(CsvTable table) {
        this.table = table;
    }

    /** Every reading of a file, in its order. @throws quietband.model.ModelException with every problem in it */
    public static List<ShakerReading> read(Path path) {
        CsvTable table = CsvTable.read(path);
        table.columns(List.of("axis"), OPTIONAL);
        ShakerFile file = new ShakerFile(table);
        file.checkHeader();
        List<ShakerReading> readings = new ArrayList<>();
        for (int row = 0; row < table.size(); row++) {
            ShakerReading reading = file.reading(row);
            if (reading != null) {
                readings.add(reading);
            }
        }
        if (table.size() == 0) {
            table.tell(1, "", "no row below the header", "at least one reading is due");
        }
        table.check();
        return readings;
    }

    private void checkHeader() {
        boolean sidebands = table.has("sideband_dbc") && table.has("frequency_hz") && (table.has("peak_g") || table.has("rms_g"));
        boolean turned = table.has("sense") && table.has("output_hz");
        if (!sidebands && !turned) {
            table.tell(1, "", "header is '" + String.join(",", table.header()) + "'",
                "axis,frequency_hz,peak_g (or rms_g),sideband_dbc or axis,sense,output_hz is due");
        }
        table.check();
    }

    private ShakerReading reading(int row) {
        Axis axis = Axis.of(table.text(row, "axis"));
        if (axis == null) {
            table.tell(table.line(row), "axis", "'" + table.text(row, "axis") + "' is no axis", "write x, y or z");
            return null;
        }
        String serial = table.label(row, "serial");
        if (table.has("serial") && serial.isEmpty()) {
            table.tell(table.line(row), "serial", "has none", "name the resonator in every row, or leave the column out");
        }
        boolean sideband = given(row, "sideband_dbc");
        boolean turned = given(row, "output_hz");
        if (sideband == turned) {
            table.tell(table.line(row), "", sideband ? "holds a sideband and an output frequency" : "holds no reading",
                "one reading a row: sideband_dbc, or sense and output_hz");
            return null;
        }
        return sideband ? sideband(row, serial, axis) : turnOver(row, serial, axis);
    }

    private boolean given(int row, String column) {
        return !table.text(row, column).isEmpty();
    }

    private double optional(int row, String column) {
        return given(row, column) ? table.number(row, column) : Double.NaN;
    }

    private double positive(int row, String column) {
        double value = table.number(row, column);
        if (value <= 0) {
            table.tell(table.line(row), column, "'" + table.text(row, column) + "' is not above 0", "write a number above 0");
        }
        return value;
    }

    private double decibels(int row, String column) {
        double value = optional(row, column);
        if (Math.abs(value) > MOST_DB) {
            table.tell(table.line(row), column, "'" + table.text(row, column) + "' is beyond any instrument", "write a level in dBc");
        }
        return value;
    }

    private ShakerReading sideband(int row, String serial, Axis axis) {
        double f = positive(row, "frequency_hz");
        boolean peak = given(row, "peak_g");
        boolean rms = given(row, "rms_g");
        double factor = peak ? 1 : ROOT_TWO;
        double level = peak || !rms ? positive(row, table.has("peak_g") ? "peak_g" : "rms_g") : ROOT_TWO * positive(row, "rms_g");
        if (peak && rms && Math.abs(level / table.number(row, "rms_g") / ROOT_TWO - 1) > 0.02) {
            table.tell(table.line(row), "rms_g", String.format(Locale.ROOT, "peak over rms is %.3f, a sine has 1.414 (3.01 dB)",
                level / table.number(row, "rms_g")), "tell peak and rms apart, or leave one column out");
        }
        double[] cross = new double[3];
        boolean read = false;
        for (Axis other : Axis.ALL) {
            String column = "cross_" + other.letter() + "_g";
            if (other != axis && given(row, column)) {
                cross[other.ordinal()] = factor * table.number(row, column) / level;
                read = true;
            }
        }
        double sigma = optional(row, "uncertainty_db");
        if (sigma <= 0) {
            table.tell(table.line(row), "uncertainty_db", "'" + table.text(row, "uncertainty_db") + "' is not above 0",
                "write a standard uncertainty, or leave the cell empty");
        }
        return new ShakerReading(serial, table.line(row), axis, f, level, decibels(row, "sideband_dbc"),
            Math.toRadians(optional(row, "phase_deg")), decibels(row, "floor_dbc"), sigma, cross, read, 0, Double.NaN, Double.NaN);
    }

    private ShakerReading turnOver(int row, String serial, Axis axis) {
        String sense = table.text(row, "sense").toLowerCase(Locale.ROOT);
        int way = UP.contains(sense) ? 1 : DOWN.contains(sense) ? -1 : 0;
        if (way == 0) {
            table.tell(table.line(row), "sense", "'" + table.text(row, "sense") + "' is no sense",
                "write up or + for the axis up (it then feels +1 g), down or - for the axis down");
        }
        return new ShakerReading(serial, table.line(row), axis, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN,
            new double[3], false, way == 0 ? 1 : way, positive(row, "output_hz"), optional(row, "time_s"));
    }
}
