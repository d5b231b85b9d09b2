package quietband.model;

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
record Node(Kind kind, String text, Style style, List<Pair> pairs, List<Node> items, Span span, String anchor,
            boolean alias) {

    enum Kind { SCALAR, MAP, LIST }

    /** PLAIN scalars and BLOCK collections, QUOTED scalars, FLOW collections, LITERAL (| and >) scalars. */
    enum Style { PLAIN, QUOTED, LITERAL, BLOCK, FLOW }

    /** A key and its value. */
    record Pair(Node key, Node value) { }

    /**
     * Where it stands.
     *
     * @param start  offset of the first character, an anchor included
     * @param end    offset after its last character (without comments and line ends that follow)
     * @param line   of the start, from 1
     * @param column of the start, from 1
     */
    record Span(int start, int end, int line, int column) { }

    int line() {
        return span.line();
    }

    int column() {
        return span.column();
    }

    boolean isMap() {
        return kind == Kind.MAP;
    }

    boolean isList() {
        return kind == Kind.LIST;
    }

    boolean isScalar() {
        return kind == Kind.SCALAR;
    }

    /** A key without a value, ~ or null. */
    boolean isNull() {
        return isScalar() && style == Style.PLAIN
            && (text.isEmpty() || text.equals("~") || text.toLowerCase(Locale.ROOT).equals("null"));
    }

    /** "a map", "a list" or the text in quotes, for messages. */
    String shown() {
        return switch (kind) {
            case MAP -> "a map";
            case LIST -> "a list";
            case SCALAR -> "'" + shorten(text) + "'";
        };
    }

    /** The value of a key of a map; null when it has none. */
    Node get(String key) {
        for (Pair pair : pairs) {
            if (pair.key().isScalar() && pair.key().text().equals(key)) {
                return pair.value();
            }
        }
        return null;
    }

    static String shorten(String text) {
        String line = text.replaceAll("\\s+", " ");
        return line.length() <= 40 ? line : line.substring(0, 37) + "...";
    }
}
