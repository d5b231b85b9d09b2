package quietband.model.read;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import quietband.model.Axis;
import quietband.model.format.FormatKey;
import quietband.model.format.FormatNode;
import quietband.model.format.ModelForm;
import quietband.model.format.WrittenValue;
import quietband.model.text.FileProblem;
import quietband.model.text.FileProblems;
import quietband.model.text.FormerNames;
import quietband.model.text.ModelException;
import quietband.model.text.YamlNode;

/** Walks YAML nodes along the format and gives the value tree; tells every problem and goes on. */
final class FormatReader {

    private static final int MOST_VALUES = 300_000;
    private static final int MOST_SPRINGS = 2000;

    private final FileProblems problems;
    private final ScalarReader scalars;
    private final MapReader maps;
    private int visits;
    private int springs;

    FormatReader(FileProblems problems) {
        this.problems = problems;
        this.scalars = new ScalarReader(problems);
        this.maps = new MapReader(problems, scalars);
    }

    /** The value tree of a whole file. */
    WrittenValue root(YamlNode node) {
        if (!node.isMap()) {
            throw new ModelException(List.of(new FileProblem(problems.file(), node.line(), node.column(), "",
                node.shown() + " stands where the keys of a model are due", "start with 'quietband: 1'")));
        }
        return block(ModelForm.ROOT, node, node, "");
    }

    private void count(YamlNode node, String path) {
        if (++visits > MOST_VALUES) {
            problems.add(node, path, "aliases unfold to more than " + MOST_VALUES + " values", "a model is far smaller");
            problems.check();
        }
    }

    private WrittenValue walk(FormatKey key, YamlNode node, YamlNode where, String path) {
        count(node, path);
        FormatNode form = key.form();
        if (form instanceof FormatNode.Block block) {
            return block(block, node, where, path);
        }
        if (form instanceof FormatNode.AxisBlock axes) {
            return axisBlock(axes, node, where, path);
        }
        if (form instanceof FormatNode.Entries entries) {
            return entries(entries, node, path);
        }
        if (form instanceof FormatNode.WordOr other) {
            if (node.isScalar() && !node.isNull()) {
                String word = scalars.word(List.of(other.word()), node, path);
                return word == null ? leaf(form, path, node).spoil() : leaf(form, path, node).text(word);
            }
            return walk(FormatKey.of(key.name(), other.other(), key.doc()), node, where, path);
        }
        if (form instanceof FormatNode.Spread spread) {
            return maps.spread(spread, node, path);
        }
        if (form instanceof FormatNode.Places places) {
            return places(places, node, path);
        }
        return leaf(form, node, path);
    }

    private static WrittenValue leaf(FormatNode form, String path, YamlNode node) {
        return new WrittenValue(form, path, node, true);
    }

    private WrittenValue leaf(FormatNode form, YamlNode node, String path) {
        WrittenValue written = leaf(form, path, node);
        if (form instanceof FormatNode.Num num) {
            double number = scalars.number(num, node, path);
            written.numbers(new double[] {number}, new boolean[1]);
            return Double.isNaN(number) ? written.spoil() : written;
        }
        Object value = null;
        if (form instanceof FormatNode.Text || form instanceof FormatNode.AnyAmount) {
            FormatNode.Text kind = form instanceof FormatNode.Text text ? text : new FormatNode.Text(FormatNode.Kind.FREE);
            value = scalars.text(kind, node, path);
        } else if (form instanceof FormatNode.Choice choice) {
            value = scalars.word(choice.words(), node, path);
        } else if (form instanceof FormatNode.Direction direction) {
            value = scalars.direction(direction, node, path);
        } else if (form instanceof FormatNode.OneAxis) {
            value = scalars.axis(node, path);
        } else if (form instanceof FormatNode.AxisSet) {
            value = scalars.axes(node, path);
        } else if (form instanceof FormatNode.Coefficients coefficients) {
            value = maps.coefficients(coefficients, node, path);
        } else if (form instanceof FormatNode.Labels) {
            value = labels(written, node, path);
        }
        written.value(value);
        if (value instanceof String text) {
            written.text(text);
        }
        return value == null ? written.spoil() : written;
    }

    private WrittenValue block(FormatNode.Block form, YamlNode node, YamlNode where, String path) {
        WrittenValue written = new WrittenValue(form, path, where, true);
        if (!node.isMap()) {
            String keys = String.join(", ", form.names().subList(0, Math.min(4, form.keys().size())));
            problems.add(node, path, node.isNull() ? "has no value" : node.shown() + " stands where a map is due",
                "write its keys: " + keys + (form.keys().size() > 4 ? ", ..." : ""));
            written.spoil();
        }
        Map<String, YamlNode> seen = new HashMap<>();
        for (YamlNode.Pair pair : node.pairs()) {
            String name = maps.keyName(pair, seen, path);
            FormatKey key = name == null ? null : form.key(name).orElse(null);
            if (name != null && key == null) {
                maps.unknown(pair, form.names(), path);
                name = FormerNames.now(name, form.names()).filter(now -> !seen.containsKey(now)).orElse(null);
                key = name == null ? null : form.key(name).orElseThrow();
            }
            if (key != null && !MapReader.leftOut(pair.value())) {
                written.put(name, walk(key, pair.value(), pair.key(), MapReader.join(path, name)));
            }
        }
        for (FormatKey key : form.keys()) {
            if (!written.children().containsKey(key.name())) {
                WrittenValue missing = FormatDefaults.of(key, MapReader.join(path, key.name()), where, false);
                written.put(key.name(), missing);
                if (key.required() && node.isMap()) {
                    problems.add(where, missing.path(), "is missing", "add it: " + key.doc());
                    missing.spoil();
                }
            }
        }
        return written;
    }

    private WrittenValue axisBlock(FormatNode.AxisBlock form, YamlNode node, YamlNode where, String path) {
        WrittenValue written = new WrittenValue(form, path, where, true);
        boolean perAxis = node.isMap() && node.pairs().stream().anyMatch(p -> Axis.of(p.key().text()) != null);
        if (!perAxis) {
            WrittenValue one = block(form.each(), node, where, path);
            FormatNode.Spread.XYZ.forEach(axis -> written.put(axis, one.copy()));
            return written;
        }
        Map<String, YamlNode> seen = new HashMap<>();
        for (YamlNode.Pair pair : node.pairs()) {
            String name = maps.keyName(pair, seen, path);
            if (name != null && Axis.of(name) == null) {
                problems.add(pair.key(), MapReader.join(path, YamlNode.shorten(name)), "unknown key beside axes",
                    "write x, y and z with their keys, or the keys alone for all axes");
            } else if (name != null && !MapReader.leftOut(pair.value())) {
                written.put(name, block(form.each(), pair.value(), pair.key(), MapReader.join(path, name)));
            }
        }
        for (String axis : FormatNode.Spread.XYZ) {
            if (!written.children().containsKey(axis)) {
                written.put(axis, FormatDefaults.of(form.each(), Double.NaN, MapReader.join(path, axis), where, false));
            }
        }
        return written;
    }

    private WrittenValue places(FormatNode.Places form, YamlNode node, String path) {
        WrittenValue written = leaf(form, path, node);
        if (!node.isList() || node.items().isEmpty()) {
            problems.add(node, path, node.isList() ? "has no place" : node.shown() + " stands where a list is due",
                "write a list of places, e.g. [{x: 24 mm, y: 24 mm}]");
            return written.spoil();
        }
        springs += node.items().size();
        if (springs > MOST_SPRINGS) {
            problems.add(node, path, "more than " + MOST_SPRINGS + " springs", "describe the platform with fewer");
            return written.spoil();
        }
        String group = path.substring(0, path.length() - ".at".length());
        for (int i = 0; i < node.items().size(); i++) {
            written.items().add(maps.spread(form.each(), node.items().get(i), group + "[" + (i + 1) + "].at"));
        }
        return written;
    }

    private WrittenValue entries(FormatNode.Entries form, YamlNode node, String path) {
        WrittenValue written = leaf(form, path, node);
        if (!node.isList() || node.items().size() < form.least()) {
            problems.add(node, path, node.isNull() ? "has no value" : node.isList() ? "is empty"
                : node.shown() + " stands where a list is due", "write a list of maps, e.g. [{"
                + form.each().names().get(0) + ": ..}]");
            return written.spoil();
        }
        Map<String, YamlNode> names = new HashMap<>();
        for (int i = 0; i < node.items().size() && !problems.full(); i++) {
            YamlNode item = node.items().get(i);
            String name = entryName(form, item, i + 1, MapReader.join(path, "" + (i + 1)), names);
            WrittenValue entry = block(form.each(), item, item, MapReader.join(path, name));
            entry.text(name);
            written.items().add(entry);
        }
        rising(form, written);
        return written;
    }

    /** The name of an entry or its number; tells when a name is taken. */
    private String entryName(FormatNode.Entries form, YamlNode item, int number, String path, Map<String, YamlNode> names) {
        YamlNode named = form.each().key("name").isPresent() ? item.get("name") : null;
        boolean usable = named != null && named.isScalar() && !named.isNull() && !named.text().isBlank();
        String name = usable ? named.text().strip() : "" + number;
        if (usable && name.matches("[0-9]+") && !name.equals("" + number)) {
            problems.add(named, path + ".name", "'" + YamlNode.shorten(name) + "' is the number of another entry",
                "use a letter in the name");
        } else if (usable && names.putIfAbsent(name, named) != null) {
            problems.add(named, path + ".name", "'" + YamlNode.shorten(name) + "' is taken",
                "the entry at line " + names.get(name).line() + " has it; choose another name");
        }
        return name;
    }

    private void rising(FormatNode.Entries form, WrittenValue written) {
        for (int i = 1; form.rising() != null && i < written.items().size(); i++) {
            WrittenValue before = written.items().get(i - 1).get(form.rising());
            WrittenValue here = written.items().get(i).get(form.rising());
            if (before.good() && here.good() && here.number() <= before.number()) {
                problems.add(here.node(), here.path(), here.node().shown() + " does not rise above "
                    + before.node().shown(), "sort the points, one for each " + form.rising());
                here.spoil();
            }
        }
    }

    private Object labels(WrittenValue written, YamlNode node, String path) {
        if (!node.isList() || node.items().size() < 2 || !node.items().stream().allMatch(YamlNode::isScalar)) {
            problems.add(node, path, node.isList() ? "fewer than two names" : node.shown()
                + " stands where a list is due", "write the names of two tolerances or more, e.g. [loop gain, loop delay]");
            return null;
        }
        List<String> names = new ArrayList<>();
        for (YamlNode item : node.items()) {
            names.add(item.text().strip());
            written.items().add(leaf(new FormatNode.Text(FormatNode.Kind.LABEL), path, item).text(item.text().strip()));
        }
        if (Set.copyOf(names).size() < names.size()) {
            problems.add(node, path, "a name stands there twice", "name each tolerance once");
            return null;
        }
        return names;
    }
}
