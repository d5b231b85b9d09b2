package quietband.tuning.orient;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import quietband.model.Resonance;
import quietband.model.Vec;
import quietband.model.text.CsvTable;

/**
 * Reads a table of supports: {@code support,points,x_frequency_hz,x_q,y_frequency_hz,y_q,z_frequency_hz,z_q,
 * relative_sensitivity,source}. An axis without a frequency has no resonance.
 */
public final class SupportTable {

    private static final List<String> COLUMNS = List.of("support", "points", "x_frequency_hz", "x_q", "y_frequency_hz", "y_q",
        "z_frequency_hz", "z_q", "relative_sensitivity", "source");

    private SupportTable() { }

    /** Every row. @throws quietband.model.ModelException with every problem in the file */
    public static List<SupportRow> read(Path path) {
        CsvTable table = CsvTable.read(path).columns(COLUMNS, List.of());
        List<SupportRow> rows = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (int row = 0; row < table.size(); row++) {
            String name = table.text(row, "support");
            if (!name.matches("[A-Za-z0-9][A-Za-z0-9-]*") || !names.add(name)) {
                table.tell(table.line(row), "support", "'" + name + "' " + (names.contains(name) ? "stands twice" : "is no name"),
                    "a name of its own of letters, digits and hyphens is due");
            }
            double[] f = new double[3];
            double[] q = new double[3];
            for (int i = 0; i < 3; i++) {
                String axis = "xyz".substring(i, i + 1);
                boolean none = table.text(row, axis + "_frequency_hz").isEmpty();
                f[i] = none ? Double.POSITIVE_INFINITY : positive(table, row, axis + "_frequency_hz");
                q[i] = none ? 1 : positive(table, row, axis + "_q");
            }
            if (table.text(row, "source").isEmpty()) {
                table.tell(table.line(row), "source", "has none", "say where the row comes from, e.g. measured, or invented");
            }
            rows.add(new SupportRow(name, (int) positive(table, row, "points"), new Resonance(Vec.of(f), Vec.of(q)),
                positive(table, row, "relative_sensitivity"), table.label(row, "source")));
        }
        if (rows.isEmpty()) {
            table.tell(1, "", "has no rows", "write at least one support");
        }
        table.check();
        return rows;
    }

    private static double positive(CsvTable table, int row, String column) {
        double value = table.number(row, column);
        if (value <= 0) {
            table.tell(table.line(row), column, "'" + table.text(row, column) + "' is not above 0", "write a number above 0");
        }
        return value;
    }

    /** The row of a name. */
    public static Optional<SupportRow> find(List<SupportRow> rows, String name) {
        return rows.stream().filter(r -> r.name().equals(name)).findFirst();
    }
}
