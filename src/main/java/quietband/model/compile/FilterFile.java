package quietband.model.compile;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import quietband.model.Axis;
import quietband.model.DigitalFilter;
import quietband.model.text.CsvTable;
import quietband.model.text.YamlNode;

/**
 * A digital filter in a CSV file: {@code sensor_axis,kind,index,b0,b1,b2,a1,a2[,rate_hz]}. A tap has its delay in
 * samples as index and its coefficient in b0; a section has all five coefficients and its number as index.
 *
 * @param filters for x, y and z
 * @param rates   every sample rate named in the file, in Hz, with its line
 */
public record FilterFile(List<DigitalFilter> filters, List<Rate> rates) {

    private static final List<String> COLUMNS = List.of("sensor_axis", "kind", "index", "b0", "b1", "b2", "a1", "a2");
    private static final int LONGEST = 1_000_000;
    /** Largest coefficient that is read; those that no filter has overflow where responses are squared. */
    public static final double LARGEST = 1e9;

    /** A rate in Hz at a line of the file. */
    public record Rate(double rateHz, int line) { }

    /** Reads the rows. @throws ModelException with every problem */
    public static FilterFile read(CsvTable table) {
        table.exactly(COLUMNS, List.of("rate_hz"));
        List<TreeMap<Integer, Double>> taps = List.of(new TreeMap<>(), new TreeMap<>(), new TreeMap<>());
        List<TreeMap<Integer, double[]>> sections = List.of(new TreeMap<>(), new TreeMap<>(), new TreeMap<>());
        List<Rate> rates = new ArrayList<>();
        for (int row = 0; row < table.size(); row++) {
            int line = table.line(row);
            Axis axis = Axis.of(table.text(row, "sensor_axis"));
            if (axis == null) {
                table.tell(line, "sensor_axis", "'" + YamlNode.shorten(table.text(row, "sensor_axis")) + "' is no axis",
                    "write x, y or z");
                continue;
            }
            double index = table.number(row, "index");
            if (!(index >= 0 && index <= LONGEST && index == Math.rint(index))) {
                table.tell(line, "index", "'" + YamlNode.shorten(table.text(row, "index")) + "' is no index",
                    "write a whole number from 0");
                continue;
            }
            boolean taken = switch (table.text(row, "kind")) {
                case "tap" -> taps.get(axis.ordinal()).putIfAbsent((int) index, tap(table, row)) != null;
                case "section" -> sections.get(axis.ordinal()).putIfAbsent((int) index, section(table, row)) != null;
                default -> {
                    table.tell(line, "kind", "'" + YamlNode.shorten(table.text(row, "kind")) + "' is not known",
                        "write tap or section");
                    yield false;
                }
            };
            if (taken) {
                table.tell(line, "index", "is taken", "number the " + table.text(row, "kind") + "s of an axis apart");
            }
            if (table.has("rate_hz") && !table.text(row, "rate_hz").isEmpty()) {
                rates.add(new Rate(table.number(row, "rate_hz"), line));
            }
        }
        table.check();
        List<DigitalFilter> filters = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            filters.add(new DigitalFilter(taps.get(i).keySet().stream().mapToInt(Integer::intValue).toArray(),
                taps.get(i).values().stream().mapToDouble(Double::doubleValue).toArray(),
                sections.get(i).values().toArray(double[][]::new)));
        }
        return new FilterFile(List.copyOf(filters), List.copyOf(rates));
    }

    private static double tap(CsvTable table, int row) {
        for (String column : List.of("b1", "b2", "a1", "a2")) {
            if (!table.text(row, column).isEmpty() && table.number(row, column) != 0) {
                table.tell(table.line(row), column, "a tap has only b0", "leave it empty or write 0");
            }
        }
        return coefficient(table, row, "b0");
    }

    private static double coefficient(CsvTable table, int row, String column) {
        double value = table.number(row, column);
        if (Math.abs(value) > LARGEST) {
            table.tell(table.line(row), column, "'" + YamlNode.shorten(table.text(row, column)) + "' is out of range",
                "write a coefficient between -1e9 and 1e9");
        }
        return value;
    }

    private static double[] section(CsvTable table, int row) {
        double[] c = {coefficient(table, row, "b0"), coefficient(table, row, "b1"), coefficient(table, row, "b2"),
            coefficient(table, row, "a1"), coefficient(table, row, "a2")};
        if (!stable(c)) {
            table.tell(table.line(row), "a2", "the section is unstable", "|a2| < 1 and |a1| < 1 + a2 are due");
        }
        return c;
    }

    /** Whether both poles of {b0, b1, b2, a1, a2} lie inside the unit circle; true for NaN, which is told elsewhere. */
    public static boolean stable(double[] c) {
        return Double.isNaN(c[3] + c[4]) || (Math.abs(c[4]) < 1 && Math.abs(c[3]) < 1 + c[4]);
    }
}
