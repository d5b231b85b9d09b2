package quietband.model;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Walks YAML nodes along the format and gives the value tree; tells every problem and goes on. */
final class Walker {

    private static final int MOST_VALUES = 300_000;
    private static final int MOST_SPRINGS = 2000;

    private final Problems problems;
    private final ScalarReader scalars;
    private final MapReader maps;
    private int visits;
    private int springs;

    Walker(Problems problems) {
        this.problems = problems;
        this.scalars = new ScalarReader(problems);
        this.maps = new MapReader(problems, scalars);
    }

    /** The value tree of a whole file. */
    Written root(Node node) {
        if (!node.isMap()) {
            throw new ModelException(List.of(new Problem(problems.file(), node.line(), node.column(), "",
                node.shown() + " stands where the keys of a model are due", "start with 'quietband: 1'")));
        }
        return block(ModelForm.ROOT, node, node, "");
    }

    private void count(Node node, String path) {
        if (++visits > MOST_VALUES) {
            problems.add(node, path, "aliases unfold to more than " + MOST_VALUES + " values", "a model is far smaller");
            problems.check();
        }
    }

    private Written walk(Key key, Node node, Node where, String path) {
        count(node, path);
        Form form = key.form();
        if (form instanceof Form.Block block) {
            return block(block, node, where, path);
        }
        if (form instanceof Form.AxisBlock axes) {
            return axisBlock(axes, node, where, path);
        }
        if (form instanceof Form.Entries entries) {
            return entries(entries, node, path);
        }
        if (form instanceof Form.WordOr other) {
            if (node.isScalar() && !node.isNull()) {
                String word = scalars.word(List.of(other.word()), node, path);
                return word == null ? leaf(form, path, node).spoil() : leaf(form, path, node).text(word);
            }
            return walk(Key.of(key.name(), other.other(), key.doc()), node, where, path);
        }
        if (form instanceof Form.Spread spread) {
            return maps.spread(spread, node, path);
        }
        if (form instanceof Form.Places places) {
            return places(places, node, path);
        }
        return leaf(form, node, path);
    }

    private static Written leaf(Form form, String path, Node node) {
        return new Written(form, path, node, true);
    }

    private Written leaf(Form form, Node node, String path) {
        Written written = leaf(form, path, node);
        if (form instanceof Form.Num num) {
            double number = scalars.number(num, node, path);
            written.numbers(new double[] {number}, new boolean[1]);
            return Double.isNaN(number) ? written.spoil() : written;
        }
        Object value = null;
        if (form instanceof Form.Text || form instanceof Form.AnyAmount) {
            Form.Text kind = form instanceof Form.Text text ? text : new Form.Text(Form.Kind.FREE);
            value = scalars.text(kind, node, path);
        } else if (form instanceof Form.Choice choice) {
            value = scalars.word(choice.words(), node, path);
        } else if (form instanceof Form.Direction direction) {
            value = scalars.direction(direction, node, path);
        } else if (form instanceof Form.OneAxis) {
            value = scalars.axis(node, path);
        } else if (form instanceof Form.AxisSet) {
            value = scalars.axes(node, path);
        } else if (form instanceof Form.Coefficients coefficients) {
            value = maps.coefficients(coefficients, node, path);
        } else if (form instanceof Form.Labels) {
            value = labels(written, node, path);
        }
        written.value(value);
        if (value instanceof String text) {
            written.text(text);
        }
        return value == null ? written.spoil() : written;
    }

    private Written block(Form.Block form, Node node, Node where, String path) {
        Written written = new Written(form, path, where, true);
        if (!node.isMap()) {
            String keys = String.join(", ", form.names().subList(0, Math.min(4, form.keys().size())));
            problems.add(node, path, node.isNull() ? "has no value" : node.shown() + " stands where a map is due",
                "write its keys: " + keys + (form.keys().size() > 4 ? ", ..." : ""));
            written.spoil();
        }
        Map<String, Node> seen = new HashMap<>();
        for (Node.Pair pair : node.pairs()) {
            String name = maps.keyName(pair, seen, path);
            Key key = name == null ? null : form.key(name).orElse(null);
            if (name != null && key == null) {
                maps.unknown(pair, form.names(), path);
            } else if (key != null && !MapReader.leftOut(pair.value())) {
                written.put(name, walk(key, pair.value(), pair.key(), MapReader.join(path, name)));
            }
        }
        for (Key key : form.keys()) {
            if (!written.children().containsKey(key.name())) {
                Written missing = Defaults.of(key, MapReader.join(path, key.name()), where, false);
                written.put(key.name(), missing);
                if (key.required() && node.isMap()) {
                    problems.add(where, missing.path(), "is missing", "add it: " + key.doc());
                    missing.spoil();
                }
            }
        }
        return written;
    }

    private Written axisBlock(Form.AxisBlock form, Node node, Node where, String path) {
        Written written = new Written(form, path, where, true);
        boolean perAxis = node.isMap() && node.pairs().stream().anyMatch(p -> Axis.of(p.key().text()) != null);
        if (!perAxis) {
            Written one = block(form.each(), node, where, path);
            Form.Spread.XYZ.forEach(axis -> written.put(axis, one.copy()));
            return written;
        }
        Map<String, Node> seen = new HashMap<>();
        for (Node.Pair pair : node.pairs()) {
            String name = maps.keyName(pair, seen, path);
            if (name != null && Axis.of(name) == null) {
                problems.add(pair.key(), MapReader.join(path, Node.shorten(name)), "unknown key beside axes",
                    "write x, y and z with their keys, or the keys alone for all axes");
            } else if (name != null && !MapReader.leftOut(pair.value())) {
                written.put(name, block(form.each(), pair.value(), pair.key(), MapReader.join(path, name)));
            }
        }
        for (String axis : Form.Spread.XYZ) {
            if (!written.children().containsKey(axis)) {
                written.put(axis, Defaults.of(form.each(), Double.NaN, MapReader.join(path, axis), where, false));
            }
        }
        return written;
    }

    private Written places(Form.Places form, Node node, String path) {
        Written written = leaf(form, path, node);
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

    private Written entries(Form.Entries form, Node node, String path) {
        Written written = leaf(form, path, node);
        if (!node.isList() || node.items().size() < form.least()) {
            problems.add(node, path, node.isNull() ? "has no value" : node.isList() ? "is empty"
                : node.shown() + " stands where a list is due", "write a list of maps, e.g. [{"
                + form.each().names().get(0) + ": ..}]");
            return written.spoil();
        }
        Map<String, Node> names = new HashMap<>();
        for (int i = 0; i < node.items().size() && !problems.full(); i++) {
            Node item = node.items().get(i);
            String name = entryName(form, item, i + 1, MapReader.join(path, "" + (i + 1)), names);
            Written entry = block(form.each(), item, item, MapReader.join(path, name));
            entry.text(name);
            written.items().add(entry);
        }
        rising(form, written);
        return written;
    }

    /** The name of an entry or its number; tells when a name is taken. */
    private String entryName(Form.Entries form, Node item, int number, String path, Map<String, Node> names) {
        Node named = form.each().key("name").isPresent() ? item.get("name") : null;
        boolean usable = named != null && named.isScalar() && !named.isNull() && !named.text().isBlank();
        String name = usable ? named.text().strip() : "" + number;
        if (usable && name.matches("[0-9]+") && !name.equals("" + number)) {
            problems.add(named, path + ".name", "'" + Node.shorten(name) + "' is the number of another entry",
                "use a letter in the name");
        } else if (usable && names.putIfAbsent(name, named) != null) {
            problems.add(named, path + ".name", "'" + Node.shorten(name) + "' is taken",
                "the entry at line " + names.get(name).line() + " has it; choose another name");
        }
        return name;
    }

    private void rising(Form.Entries form, Written written) {
        for (int i = 1; form.rising() != null && i < written.items().size(); i++) {
            Written before = written.items().get(i - 1).get(form.rising());
            Written here = written.items().get(i).get(form.rising());
            if (before.good() && here.good() && here.number() <= before.number()) {
                problems.add(here.node(), here.path(), here.node().shown() + " does not rise above "
                    + before.node().shown(), "sort the points, one for each " + form.rising());
                here.spoil();
            }
        }
    }

    private Object labels(Written written, Node node, String path) {
        if (!node.isList() || node.items().size() < 2 || !node.items().stream().allMatch(Node::isScalar)) {
            problems.add(node, path, node.isList() ? "fewer than two names" : node.shown()
                + " stands where a list is due", "write the names of two tolerances or more, e.g. [loop gain, loop delay]");
            return null;
        }
        List<String> names = new ArrayList<>();
        for (Node item : node.items()) {
            names.add(item.text().strip());
            written.items().add(leaf(new Form.Text(Form.Kind.LABEL), path, item).text(item.text().strip()));
        }
        if (Set.copyOf(names).size() < names.size()) {
            problems.add(node, path, "a name stands there twice", "name each tolerance once");
            return null;
        }
        return names;
    }
}
