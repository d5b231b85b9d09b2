package quietband.model.text;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Prints YAML nodes on one line, scalars as they stand in the source where that is possible. */
public final class FlowText {

    private FlowText() { }

    /** A node and all below it, aliases written out, without anchors and comments. */
    public static String of(YamlNode node, String source) {
        return switch (node.kind()) {
            case SCALAR -> scalar(node, source);
            case LIST -> list(node.items(), source);
            case MAP -> "{" + node.pairs().stream().map(p -> pair(p, source)).collect(Collectors.joining(", ")) + "}";
        };
    }

    static String list(List<YamlNode> items, String source) {
        return "[" + items.stream().map(i -> of(i, source)).collect(Collectors.joining(", ")) + "]";
    }

    static String pair(YamlNode.Pair pair, String source) {
        return of(pair.key(), source) + ": " + of(pair.value(), source);
    }

    private static String scalar(YamlNode node, String source) {
        if (node.style() == YamlNode.Style.QUOTED && !node.alias() && node.anchor().isEmpty()) {
            String slice = source.substring(node.span().start(), node.span().end());
            return slice.contains("\n") ? quoted(node.text()) : slice;
        }
        return node.style() == YamlNode.Style.PLAIN ? plain(node.text()) : quoted(node.text());
    }

    private static String plain(String text) {
        boolean safe = !text.isEmpty() && text.chars().noneMatch(c -> ",[]{}\n\r".indexOf(c) >= 0);
        return safe ? text : quoted(text);
    }

    /** A text that reads back as itself anywhere: in double quotes, with everything else escaped. */
    public static String quoted(String text) {
        StringBuilder out = new StringBuilder("\"");
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\n' -> out.append("\\n");
                default -> {
                    if (c < ' ' || c == 0x7f || c == 0x85 || c == 0xa0 || c == 0x2028 || c == 0x2029) {
                        out.append(String.format(Locale.ROOT, "\\u%04x", (int) c));
                    } else {
                        out.append(c);
                    }
                }
            }
        }
        return out.append('"').toString();
    }
}
