package quietband.model.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quietband.model.Tolerance;
import quietband.model.Vec;
import quietband.model.format.WrittenValue;
import quietband.model.text.CsvTable;
import quietband.spectrum.LogCurve;

/** Tables a vibration or a lot is read from. */
final class ProfileFile {

    private static final List<String> PROFILE = List.of("frequency_hz", "density_g2_per_hz");
    private static final List<String> LOT = List.of("serial", "x_ppb_per_g", "y_ppb_per_g", "z_ppb_per_g");

    private ProfileFile() { }

    /** Acceleration density in g^2/Hz over Hz. @throws ModelException with every problem */
    static LogCurve profile(CsvTable table) {
        table.exactly(PROFILE, List.of());
        double[] frequency = table.numbers("frequency_hz");
        double[] density = table.numbers("density_g2_per_hz");
        for (int i = 0; i < frequency.length; i++) {
            if (frequency[i] <= 0 || (i > 0 && frequency[i] <= frequency[i - 1])) {
                table.tell(table.line(i), "frequency_hz", "'" + table.text(i, "frequency_hz") + "' does not rise",
                    "sort the points from above 0, one for each frequency");
            }
            if (density[i] < 0) {
                table.tell(table.line(i), "density_g2_per_hz", "'" + table.text(i, "density_g2_per_hz")
                    + "' is below 0", "a density is at least 0");
            }
        }
        rows(table);
        return LogCurve.logLog(frequency, density, LogCurve.Outside.ZERO);
    }

    /** Sensitivities of measured units. @throws ModelException with every problem */
    static Tolerance.Lot lot(CsvTable table, String file) {
        table.exactly(LOT, List.of());
        double[] x = table.numbers("x_ppb_per_g");
        double[] y = table.numbers("y_ppb_per_g");
        double[] z = table.numbers("z_ppb_per_g");
        List<String> serials = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
            serials.add(table.label(i, "serial"));
        }
        rows(table);
        List<Vec> rows = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
            rows.add(new Vec(x[i] / 1e9, y[i] / 1e9, z[i] / 1e9));
        }
        return new Tolerance.Lot(file, serials, rows);
    }

    private static void rows(CsvTable table) {
        if (table.size() == 0) {
            table.tell(1, "", "has no rows", "write at least one below the header");
        }
        table.check();
    }

    /** Reads the file named at a key, if it can be read. */
    static void load(WrittenValue key, ReferencedFiles references) {
        Optional<CsvTable> table = references.table(key);
        if (table.isEmpty() || !references.collect(() -> key.value(profile(table.get())))) {
            key.spoil();
        }
    }
}
