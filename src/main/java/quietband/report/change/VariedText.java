package quietband.report.change;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import quietband.model.Design;
import quietband.report.file.NumberFormat;
import quietband.tuning.trade.VariedQuantity;
import quietband.units.Unit;

/**
 * A varied quantity as tables write it.
 *
 * @param of   the quantity
 * @param unit in which it is written
 */
record VariedText(VariedQuantity of, Unit unit) {

    static List<VariedText> all(List<VariedQuantity> axes, List<Unit> units) {
        return IntStream.range(0, axes.size()).mapToObj(a -> new VariedText(axes.get(a), units.get(a))).toList();
    }

    String path() {
        return of.what().path();
    }

    /** A value in base units in the unit of the table. */
    double in(double value) {
        return unit.fromBase(value).doubleValue();
    }

    double from() {
        return in(of.from());
    }

    double to() {
        return in(of.to());
    }

    /** As a design has it. */
    double now(Design design) {
        return in(design.quantities().value(of.what().slot(0)));
    }

    /** The path and unit in snake case. */
    String column() {
        String text = path() + " " + unit.text().replace("%", "percent").replace("/", " per ").replace("*", " ").replace("^", "");
        return text.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "_").replaceAll("^_|_$", "");
    }

    String label() {
        return unit.text().isEmpty() ? path() : path() + ", " + unit.text();
    }

    static String brief(double v) {
        return NumberFormat.brief(v, 5);
    }
}
