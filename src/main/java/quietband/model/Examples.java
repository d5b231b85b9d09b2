package quietband.model;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What may stand at a place of the format, as an example on one line: for a key that a file leaves out. */
final class Examples {

    /** Of whole blocks whose keys depend on one another. */
    private static final Map<String, String> WHOLE = Map.of(
        "platform", "{mass: 210 g, size: {x: 62 mm, y: 62 mm, z: 24 mm}, springs: [{at: [{x: 24 mm, y: 24 mm}, {x: -24 mm, y: 24 mm}, "
            + "{x: -24 mm, y: -24 mm}, {x: 24 mm, y: -24 mm}], stiffness: 12 N/mm, loss_factor: 10 %}]}",
        "tolerances", "[{name: crystal, of: oscillator.resonator.sensitivity, scale: 5 %}]",
        "conditions", "[{name: hot, change: [{of: oscillator.resonator.sensitivity, scale: 2 %}]}]");

    private Examples() { }

    /** For a key: a value that does there by itself, but for names of files and of other entries. */
    static String of(Key key) {
        return WHOLE.getOrDefault(key.name(), of(key.form()));
    }

    /** For a block, its required keys, or its first one where none is. */
    private static String of(Form form) {
        if (form instanceof Form.Num num) {
            return num.dimension().example();
        } else if (form instanceof Form.Spread spread) {
            return of(spread.each());
        } else if (form instanceof Form.Choice choice) {
            return choice.words().get(0);
        } else if (form instanceof Form.WordOr other) {
            return other.word();
        } else if (form instanceof Form.Block block) {
            return block(block);
        } else if (form instanceof Form.AxisBlock axes) {
            return block(axes.each());
        } else if (form instanceof Form.Entries entries) {
            return "[" + block(entries.each()) + "]";
        } else if (form instanceof Form.Places places) {
            return "[{x: " + of(places.each()) + "}]";
        } else if (form instanceof Form.Coefficients c) {
            return c.width() == 1 ? "[1.3, -0.3]" : "[[1, 0, 0, 0, 0]]";
        }
        return word(form);
    }

    private static String word(Form form) {
        if (form instanceof Form.Text text) {
            return text.kind() == Form.Kind.FILE ? "file.csv" : text.kind() == Form.Kind.PATH ? "platform.mass" : "name";
        } else if (form instanceof Form.AxisSet) {
            return "[x, y]";
        } else if (form instanceof Form.Labels) {
            return "[one, other]";
        }
        return form instanceof Form.AnyAmount ? "3 %" : "z";
    }

    private static String block(Form.Block block) {
        List<Key> required = block.keys().stream().filter(Key::required).toList();
        return (required.isEmpty() ? block.keys().subList(0, 1) : required).stream().map(k -> k.name() + ": " + of(k.form()))
            .collect(Collectors.joining(", ", "{", "}"));
    }
}
