package quietband.model.format;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What may stand at a place of the format, as an example on one line: for a key that a file leaves out. */
public final class ValueExamples {

    /** Of whole blocks whose keys depend on one another. */
    private static final Map<String, String> WHOLE = Map.of(
        "platform", "{mass: 210 g, size: {x: 62 mm, y: 62 mm, z: 24 mm}, springs: [{at: [{x: 24 mm, y: 24 mm}, {x: -24 mm, y: 24 mm}, "
            + "{x: -24 mm, y: -24 mm}, {x: 24 mm, y: -24 mm}], stiffness: 12 N/mm, loss_factor: 10 %}]}",
        "tolerances", "[{name: crystal, of: oscillator.resonator.sensitivity, scale: 5 %}]",
        "conditions", "[{name: hot, change: [{of: oscillator.resonator.sensitivity, scale: 2 %}]}]");

    private ValueExamples() { }

    /** For a key: a value that does there by itself, but for names of files and of other entries. */
    public static String of(FormatKey key) {
        return WHOLE.getOrDefault(key.name(), of(key.form()));
    }

    /** For a block, its required keys, or its first one where none is. */
    private static String of(FormatNode form) {
        if (form instanceof FormatNode.Num num) {
            return num.dimension().example();
        } else if (form instanceof FormatNode.Spread spread) {
            return of(spread.each());
        } else if (form instanceof FormatNode.Choice choice) {
            return choice.words().get(0);
        } else if (form instanceof FormatNode.WordOr other) {
            return other.word();
        } else if (form instanceof FormatNode.Block block) {
            return block(block);
        } else if (form instanceof FormatNode.AxisBlock axes) {
            return block(axes.each());
        } else if (form instanceof FormatNode.Entries entries) {
            return "[" + block(entries.each()) + "]";
        } else if (form instanceof FormatNode.Places places) {
            return "[{x: " + of(places.each()) + "}]";
        } else if (form instanceof FormatNode.Coefficients c) {
            return c.width() == 1 ? "[1.3, -0.3]" : "[[1, 0, 0, 0, 0]]";
        }
        return word(form);
    }

    private static String word(FormatNode form) {
        if (form instanceof FormatNode.Text text) {
            return text.kind() == FormatNode.Kind.FILE ? "file.csv" : text.kind() == FormatNode.Kind.PATH ? "platform.mass" : "name";
        } else if (form instanceof FormatNode.AxisSet) {
            return "[x, y]";
        } else if (form instanceof FormatNode.Labels) {
            return "[one, other]";
        }
        return form instanceof FormatNode.AnyAmount ? "3 %" : "z";
    }

    private static String block(FormatNode.Block block) {
        List<FormatKey> required = block.keys().stream().filter(FormatKey::required).toList();
        return (required.isEmpty() ? block.keys().subList(0, 1) : required).stream().map(k -> k.name() + ": " + of(k.form()))
            .collect(Collectors.joining(", ", "{", "}"));
    }
}
