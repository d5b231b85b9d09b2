package quietband.tuning.parts;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import quietband.model.text.CsvTable;

/**
 * Available springs, from a CSV file with the columns {@code
 * part,rate_n_per_mm,lateral_rate_n_per_mm,free_length_mm, solid_length_mm,outer_diameter_mm,mass_g,largest_load_n}
 * and optionally {@code loss_factor}
 * (0.005 where it is not stated).
 */
public record SpringCatalogue(List<Entry> entries) {

    private static final List<String> NEEDED = List.of("part", "rate_n_per_mm", "lateral_rate_n_per_mm",
        "free_length_mm",
        "solid_length_mm", "outer_diameter_mm", "mass_g", "largest_load_n");

    public SpringCatalogue {
        entries = List.copyOf(entries);
    }

    /**
     * A spring.
     *
     * @param part        its name
     * @param rate        along its axis, N/m
     * @param lateral     across it, N/m
     * @param freeLength  m
     * @param solidLength m
     * @param outer       outer diameter, m
     * @param mass        kg
     * @param largestLoad axial, N
     * @param loss        loss factor
     */
    public record Entry(String part, double rate, double lateral, double freeLength, double solidLength, double outer,
        double mass,
                        double largestLoad, double loss) { }

    /** Reads a file. @throws quietband.model.ModelException with every problem in it */
    public static SpringCatalogue read(Path file) {
        CsvTable table = CsvTable.read(file);
        table.columns(NEEDED, List.of("loss_factor"));
        List<Entry> entries = new ArrayList<>();
        for (int r = 0; r < table.size(); r++) {
            double rate = positive(table, r, "rate_n_per_mm");
            double lateral = positive(table, r, "lateral_rate_n_per_mm");
            double free = positive(table, r, "free_length_mm");
            double solid = positive(table, r, "solid_length_mm");
            if (solid >= free) {
                table.tell(table.line(r), "solid_length_mm", "is not below free_length_mm", "swap or correct them");
            }
            double loss = table.has("loss_factor") ? table.number(r, "loss_factor") : 0.005;
            entries.add(new Entry(table.label(r, "part"), 1e3 * rate, 1e3 * lateral, 1e-3 * free, 1e-3 * solid,
                1e-3 * positive(table, r, "outer_diameter_mm"), 1e-3 * positive(table, r, "mass_g"),
                positive(table, r, "largest_load_n"), Math.max(0, loss)));
        }
        if (entries.isEmpty()) {
            table.tell(1, "", "no spring below the header", "one row for each");
        }
        table.check();
        return new SpringCatalogue(entries);
    }

    private static double positive(CsvTable table, int row, String column) {
        double v = table.number(row, column);
        if (v <= 0) {
            table.tell(table.line(row), column, "'" + table.text(row, column) + "' is not above 0",
                "write what the maker states");
        }
        return v;
    }
}
