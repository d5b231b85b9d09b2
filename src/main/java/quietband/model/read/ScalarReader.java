package quietband.model.read;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import quietband.model.Axis;
import quietband.model.Vec;
import quietband.model.compile.FilterFile;
import quietband.model.format.FormatNode;
import quietband.model.quantity.NumberRange;
import quietband.model.text.CellText;
import quietband.model.text.FileProblems;
import quietband.model.text.FormerNames;
import quietband.model.text.SpellingSuggestion;
import quietband.model.text.YamlNode;
import quietband.units.Amounts;
import quietband.units.Dimension;
import quietband.units.WrongAmountException;

/** Reads the leaves of a model file: numbers, words, names, directions and filter coefficients. */
final class ScalarReader {

    private static final FormatNode.Num COEFFICIENT = new FormatNode.Num(Dimension.NUMBER,
        NumberRange.between(-FilterFile.LARGEST, FilterFile.LARGEST));

    private final FileProblems problems;

    ScalarReader(FileProblems problems) {
        this.problems = problems;
    }

    /** A number in the base unit; NaN, with a problem told, when there is none. */
    double number(FormatNode.Num form, YamlNode node, String path) {
        String expected = "expected " + form.dimension().phrase() + ", e.g. " + form.dimension().example();
        if (!node.isScalar()) {
            boolean axes = node.isMap() && node.pairs().stream().allMatch(p -> Axis.of(p.key().text()) != null);
            problems.add(node, path, axes ? "a map of axes stands where one value is due" : node.shown()
                + " stands where one value is due", expected);
            return Double.NaN;
        }
        if (node.isNull()) {
            problems.add(node, path, "has no value", expected);
            return Double.NaN;
        }
        return amount(node, node.text(), form.dimension(), form.range(), path);
    }

    /** An amount of a dimension within a range; NaN, with a problem told, when there is none. */
    double amount(YamlNode node, String text, Dimension dimension, NumberRange range, String path) {
        try {
            double value = Amounts.read(text, dimension);
            if (range.holds(value)) {
                return value;
            }
            problems.add(node, path, "'" + YamlNode.shorten(text) + "' is out of range", range.words(dimension));
        } catch (WrongAmountException e) {
            problems.add(node, path, e.found(), e.advice());
        }
        return Double.NaN;
    }

    /** A text fit for its purpose; null, with a problem told, when it is not. */
    String text(FormatNode.Text form, YamlNode node, String path) {
        if (!node.isScalar() || node.isNull() || node.text().isBlank()) {
            problems.add(node, path, node.isScalar() ? "has no value" : node.shown() + " stands where a text is due",
                "write a text or leave the key out");
            return null;
        }
        String text = node.text().strip();
        boolean label = form.kind() == FormatNode.Kind.LABEL || form.kind() == FormatNode.Kind.NAME;
        if (label && CellText.formula(text)) {
            problems.add(node, path, CellText.found(text), CellText.ADVICE);
            return null;
        }
        if (form.kind() == FormatNode.Kind.NAME && !text.matches("[A-Za-z0-9-]{1,200}")) {
            problems.add(node, path, node.shown() + " is no name", "use letters, digits and hyphens");
            return null;
        }
        if (form.kind() != FormatNode.Kind.FREE && text.codePoints().anyMatch(Character::isISOControl)) {
            problems.add(node, path, node.shown() + " has more than one line", "write one line");
            return null;
        }
        return text;
    }

    /** One of some words; with a problem told the one meant by its former name, or null, when it is none. */
    String word(List<String> words, YamlNode node, String path) {
        if (node.isScalar() && words.contains(node.text())) {
            return node.text();
        }
        String all = words.size() == 1 ? words.get(0)
            : String.join(", ", words.subList(0, words.size() - 1)) + " or " + words.get(words.size() - 1);
        problems.add(node, path, node.isNull() ? "has no value" : node.shown() + " is not known here",
            node.isScalar() ? SpellingSuggestion.advice(node.text(), words, "write " + all) : "write " + all);
        return node.isScalar() ? FormerNames.now(node.text(), words).orElse(null) : null;
    }

    /** A direction, as written for an axis map, with length 1 for a letter; null, with a problem told, when none. */
    Vec direction(FormatNode.Direction form, YamlNode node, String path) {
        if (node.isScalar()) {
            String text = node.text();
            boolean sign = form.signed() && (text.startsWith("-") || text.startsWith("+"));
            Axis axis = Axis.of(sign ? text.substring(1) : text);
            if (axis != null) {
                return Vec.ZERO.with(axis, text.startsWith("-") ? -1 : 1);
            }
        }
        if (node.isMap() && !node.pairs().isEmpty()) {
            Vec sum = directionMap(node, path);
            if (sum == null || (sum.length() > 0 && Double.isFinite(sum.length()))) {
                return sum;
            }
        }
        problems.add(node, path, node.isNull() ? "has no value" : node.shown() + " is no direction",
            "write x, y, z" + (form.signed() ? ", with a sign if need be," : "") + " or a direction {x: 1, y: 1, z: 0}");
        return null;
    }

    private Vec directionMap(YamlNode node, String path) {
        Vec sum = Vec.ZERO;
        Set<Axis> seen = EnumSet.noneOf(Axis.class);
        for (YamlNode.Pair pair : node.pairs()) {
            Axis axis = Axis.of(pair.key().text());
            if (axis == null || !seen.add(axis)) {
                problems.add(pair.key(), path, pair.key().shown() + (axis == null ? " is no axis" : " is written twice"),
                    "write x, y and z once each at most");
                return null;
            }
            double value = number(new FormatNode.Num(Dimension.NUMBER, NumberRange.between(-1e100, 1e100)), pair.value(),
                path + "." + axis.letter());
            if (Double.isNaN(value)) {
                return null;
            }
            sum = sum.with(axis, value);
        }
        return sum;
    }

    /** An axis letter; null, with a problem told, when it is none. */
    Axis axis(YamlNode node, String path) {
        Axis axis = node.isScalar() ? Axis.of(node.text()) : null;
        if (axis == null) {
            problems.add(node, path, node.isNull() ? "has no value" : node.shown() + " is no axis", "write x, y or z");
        }
        return axis;
    }

    /** Axis letters; null, with a problem told, when something else is among them. */
    Set<Axis> axes(YamlNode node, String path) {
        if (!node.isList() || node.items().isEmpty()) {
            problems.add(node, path, node.isList() ? "names no axis" : node.shown() + " stands where a list is due",
                "write the axes in a list, e.g. [x, y, z]");
            return null;
        }
        Set<Axis> axes = EnumSet.noneOf(Axis.class);
        for (YamlNode item : node.items()) {
            Axis axis = axis(item, path);
            if (axis == null) {
                return null;
            }
            if (!axes.add(axis)) {
                problems.add(item, path, "axis " + axis.letter() + " is named twice", "name it once");
                return null;
            }
        }
        return axes;
    }

    /** Rows of coefficients, of one number for taps; null, with a problem told, when they are not that. */
    double[][] coefficients(int width, YamlNode node, String path) {
        String expected = width == 1 ? "a list of numbers, e.g. [1.3, -0.4]"
            : "rows [b0, b1, b2, a1, a2], e.g. [[1, 0.1, 0, 0.1, 0]]";
        if (!node.isList()) {
            problems.add(node, path, node.shown() + " stands where a list is due", "write " + expected);
            return null;
        }
        List<double[]> rows = new ArrayList<>();
        for (YamlNode item : node.items()) {
            List<YamlNode> cells = width == 1 ? List.of(item) : item.items();
            if (cells.size() != width || width == 1 != item.isScalar()) {
                problems.add(item, path, width == 1 ? item.shown() + " is no number"
                    : "a row of " + cells.size() + " coefficients", "write " + expected);
                return null;
            }
            double[] row = new double[width];
            for (int i = 0; i < width; i++) {
                row[i] = number(COEFFICIENT, cells.get(i), path);
                if (Double.isNaN(row[i])) {
                    return null;
                }
            }
            rows.add(row);
        }
        return rows.toArray(double[][]::new);
    }
}
