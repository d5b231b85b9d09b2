package quietband.model.read;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import quietband.model.Axis;
import quietband.model.format.FormatNode;
import quietband.model.format.WrittenValue;
import quietband.model.text.FileProblems;
import quietband.model.text.SpellingSuggestion;
import quietband.model.text.YamlNode;

/** Reads maps with fixed keys: numbers per axis, filter coefficients per axis; tells odd, unknown and doubled keys. */
final class MapReader {

    private final FileProblems problems;
    private final ScalarReader scalars;

    MapReader(FileProblems problems, ScalarReader scalars) {
        this.problems = problems;
        this.scalars = scalars;
    }

    /** The key's text when it is a new one; null, with a problem told, when it is not. */
    String keyName(YamlNode.Pair pair, Map<String, YamlNode> seen, String path) {
        YamlNode key = pair.key();
        if (!key.isScalar()) {
            problems.add(key, path, key.shown() + " stands where a key is due", "write a word");
            return null;
        }
        YamlNode first = seen.putIfAbsent(key.text(), key);
        if (first != null) {
            problems.add(key, join(path, YamlNode.shorten(key.text())), "is written twice",
                "keep one; the first is at line " + first.line());
            return null;
        }
        return key.text();
    }

    void unknown(YamlNode.Pair pair, List<String> known, String path) {
        String name = pair.key().text();
        String otherwise = "known here: " + String.join(", ", known);
        if (name.equals("<<")) {
            otherwise = "merge keys are not part of YAML 1.2; write the values out";
        } else if (name.matches("[0-9]+ .*") && pair.value().isNull()) {
            otherwise = "a decimal comma? decimals take a point";
        }
        problems.add(pair.key(), join(path, YamlNode.shorten(name)), "unknown key",
            SpellingSuggestion.advice(name, known, otherwise));
    }

    WrittenValue spread(FormatNode.Spread form, YamlNode node, String path) {
        WrittenValue written = new WrittenValue(form, path, node, true);
        int count = form.keys().size();
        double[] numbers = new double[count];
        boolean[] absent = new boolean[count];
        written.numbers(numbers, absent);
        if (!node.isMap()) {
            Arrays.fill(numbers, scalars.number(form.each(), node, path));
            return Double.isNaN(numbers[0]) ? written.spoil() : written;
        }
        Map<String, YamlNode> seen = new HashMap<>();
        boolean[] there = new boolean[count];
        for (YamlNode.Pair pair : node.pairs()) {
            String name = keyName(pair, seen, path);
            int index = name == null ? -1 : form.keys().indexOf(name);
            if (name != null && index < 0) {
                unknown(pair, form.keys(), path);
                written.spoil();
            } else if (name != null && !leftOut(pair.value())) {
                there[index] = true;
                numbers[index] = scalars.number(form.each(), pair.value(), join(path, name));
                if (Double.isNaN(numbers[index])) {
                    written.spoil();
                }
            }
        }
        missing(form, written, there);
        return written;
    }

    private void missing(FormatNode.Spread form, WrittenValue written, boolean[] there) {
        List<String> lacking = new ArrayList<>();
        for (int i = 0; i < there.length; i++) {
            if (!there[i] && form.missing() == FormatNode.Missing.NONE) {
                written.numbers()[i] = Double.POSITIVE_INFINITY;
                written.markAbsent(i);
            } else if (!there[i]) {
                lacking.add(form.keys().get(i));
            }
        }
        if (form.missing() == FormatNode.Missing.REFUSED && !lacking.isEmpty()) {
            problems.add(written.node(), written.path(), "lacks " + String.join(" and ", lacking),
                "write x, y and z, or one value for all three");
            written.spoil();
        }
    }

    Object coefficients(FormatNode.Coefficients form, YamlNode node, String path) {
        double[][][] result = new double[3][0][];
        if (!node.isMap()) {
            double[][] all = scalars.coefficients(form.width(), node, path);
            Arrays.fill(result, all);
            return all == null ? null : result;
        }
        Map<String, YamlNode> seen = new HashMap<>();
        for (YamlNode.Pair pair : node.pairs()) {
            String name = keyName(pair, seen, path);
            Axis axis = name == null ? null : Axis.of(name);
            if (axis == null) {
                problems.add(pair.key(), path, pair.key().shown() + " is no axis", "write x, y or z");
                return null;
            }
            double[][] rows = leftOut(pair.value()) ? new double[0][]
                : scalars.coefficients(form.width(), pair.value(), join(path, name));
            if (rows == null) {
                return null;
            }
            result[axis.ordinal()] = rows;
        }
        return result;
    }

    static boolean leftOut(YamlNode node) {
        return node.isMap() && node.pairs().isEmpty();
    }

    static String join(String path, String key) {
        return path.isEmpty() ? key : path + "." + key;
    }
}
