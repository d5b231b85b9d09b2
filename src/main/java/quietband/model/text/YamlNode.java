package quietband.model.text;

import java.util.List;
import java.util.Locale;

/**
 * A piece of YAML with its place in the text.
 *
 * @param kind   scalar, map or list
 * @param text   of a scalar; empty for others
 * @param style  how it is written
 * @param pairs  of a map
 * @param items  of a list
 * @param span   where it stands; for an alias, where the alias stands
 * @param anchor name it is known by; empty when none
 * @param alias  whether this is another place's node by its anchor
 */
public record YamlNode(Kind kind, String text, Style style, List<Pair> pairs, List<YamlNode> items, Span span, String anchor,
            boolean alias) {

    enum Kind { SCALAR, MAP, LIST }

    /** PLAIN scalars and BLOCK collections, QUOTED scalars, FLOW collections, LITERAL (| and >) scalars. */
    public enum Style { PLAIN, QUOTED, LITERAL, BLOCK, FLOW }

    /** A key and its value. */
    public record Pair(YamlNode key, YamlNode value) { }

    /**
     * Where it stands.
     *
     * @param start  offset of the first character, an anchor included
     * @param end    offset after its last character (without comments and line ends that follow)
     * @param line   of the start, from 1
     * @param column of the start, from 1
     */
    public record Span(int start, int end, int line, int column) { }

    public int line() {
        return span.line();
    }

    public int column() {
        return span.column();
    }

    public boolean isMap() {
        return kind == Kind.MAP;
    }

    public boolean isList() {
        return kind == Kind.LIST;
    }

    public boolean isScalar() {
        return kind == Kind.SCALAR;
    }

    /** A key without a value, ~ or null. */
    public boolean isNull() {
        return isScalar() && style == Style.PLAIN
            && (text.isEmpty() || text.equals("~") || text.toLowerCase(Locale.ROOT).equals("null"));
    }

    /** "a map", "a list" or the text in quotes, for messages. */
    public String shown() {
        return switch (kind) {
            case MAP -> "a map";
            case LIST -> "a list";
            case SCALAR -> "'" + shorten(text) + "'";
        };
    }

    /** The value of a key of a map; null when it has none. */
    public YamlNode get(String key) {
        for (Pair pair : pairs) {
            if (pair.key().isScalar() && pair.key().text().equals(key)) {
                return pair.value();
            }
        }
        return null;
    }

    public static String shorten(String text) {
        String line = text.replaceAll("\\s+", " ");
        return line.length() <= 40 ? line : line.substring(0, 37) + "...";
    }
}
