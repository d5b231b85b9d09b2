package quietband.model.text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Changes to a text, collected by offset and made together; everything else stays byte for byte. */
public final class TextEdits {

    private final String text;
    private final String lineEnd;
    private final List<Edit> edits = new ArrayList<>();

    private record Edit(int start, int end, String replacement) { }

    public TextEdits(String text) {
        this.text = text;
        this.lineEnd = text.contains("\r\n") ? "\r\n" : "\n";
    }

    public String text() {
        return text;
    }

    String lineEnd() {
        return lineEnd;
    }

    public void replace(int start, int end, String replacement) {
        edits.add(new Edit(start, end, replacement.replace("\r\n", "\n").replace("\n", lineEnd)));
    }

    /** What the first edit that takes text out takes out. */
    public Optional<String> replaced() {
        return edits.stream().filter(e -> e.end() > e.start()).findFirst().map(e -> text.substring(e.start(), e.end()));
    }

    /** Whether nothing is changed. */
    public boolean none() {
        return edits.isEmpty();
    }

    /** Whether all that is changed is one plain value on one line for another, so that every other place stays what it is. */
    public boolean exchangesOneValue() {
        return edits.size() == 1 && replaced().filter(old -> plain(old) && plain(edits.get(0).replacement())).isPresent();
    }

    private static boolean plain(String piece) {
        return !piece.isBlank() && piece.chars().noneMatch(c -> "{}[]:,#&*!|>'\"%@`\n\r".indexOf(c) >= 0);
    }

    /** Takes over the edits of another on the same text; whether that is possible: none of them may touch one of these. */
    public boolean join(TextEdits others) {
        boolean apart = others.edits.stream().noneMatch(o -> edits.stream().anyMatch(e -> o.start() <= e.end() && e.start() <= o.end()));
        if (apart) {
            edits.addAll(others.edits);
        }
        return apart;
    }

    /** The changed text. Edits do not overlap; those at one offset keep their order. */
    public String apply() {
        StringBuilder out = new StringBuilder();
        int done = 0;
        List<Edit> sorted = edits.stream().sorted(Comparator.comparingInt(Edit::start)).toList();
        for (Edit edit : sorted) {
            out.append(text, done, edit.start()).append(edit.replacement());
            done = edit.end();
        }
        return out.append(text.substring(done)).toString();
    }

    /** Replaces a node. A value of several lines becomes a block below the key when the parent is in block style. */
    public void replace(YamlNode parent, YamlNode key, YamlNode node, String value) {
        int start = node.span().start();
        int end = end(node);
        boolean ownLine = key != null && node.line() > key.line();
        if (value.contains("\n") && key != null && parent.style() == YamlNode.Style.BLOCK) {
            String indent = " ".repeat(key.column() + 1);
            int from = ownLine ? start - (node.column() - 1) : trimmedBack(start);
            replace(from, end, (ownLine ? "" : "\n") + indent + value.strip().replace("\n", "\n" + indent));
        } else if (ownLine && node.column() <= key.column()) {
            replace(start, end, " ".repeat(key.column() - node.column() + 2) + value);
        } else {
            boolean glued = start > 0 && text.charAt(start - 1) == ':';
            replace(start, end, glued ? " " + value : value);
        }
    }

    /** Offset after the last character of a node that is no white space. */
    public int end(YamlNode node) {
        int end = node.span().end();
        while (end > node.span().start() && Character.isWhitespace(text.charAt(end - 1))) {
            end--;
        }
        return end;
    }

    private int trimmedBack(int offset) {
        int at = offset;
        while (at > 0 && text.charAt(at - 1) == ' ') {
            at--;
        }
        return at;
    }

    /** Offset of the end of the line (before the line break) that holds an offset. */
    public int lineStop(int offset) {
        int stop = text.indexOf('\n', offset);
        if (stop < 0) {
            return text.length();
        }
        return stop > 0 && text.charAt(stop - 1) == '\r' ? Math.max(offset, stop - 1) : stop;
    }

    /** Offset of the start of the line that holds an offset. */
    int lineStart(int offset) {
        return text.lastIndexOf('\n', offset - 1) + 1;
    }

    /** Adds a key to a map, after the present keys that come before it in a given order. */
    public void insert(YamlNode map, List<String> order, String key, String value) {
        if (map.style() == YamlNode.Style.FLOW || map.pairs().isEmpty()) {
            boolean empty = map.pairs().isEmpty();
            int at = empty ? map.span().start() + 1 : end(map.pairs().get(map.pairs().size() - 1).value());
            replace(at, at, (empty ? "" : ", ") + key + ": " + value);
            return;
        }
        YamlNode.Pair after = map.pairs().get(0);
        for (YamlNode.Pair pair : map.pairs()) {
            if (order.indexOf(pair.key().text()) < order.indexOf(key)) {
                after = pair;
            }
        }
        int column = map.pairs().get(0).key().column();
        int from = Math.max(end(after.value()), end(after.key()));
        int stop = lineStop(from);
        String indent = " ".repeat(column - 1);
        String shown = value.contains("\n") ? "\n" + indent + "  " + value.strip().replace("\n", "\n" + indent + "  ")
            : " " + value;
        replace(stop, stop, "\n" + indent + key + ":" + shown);
    }

    /** Takes a pair out of a map, with the comment behind it; comments on lines of their own stay. */
    public void remove(YamlNode map, int index) {
        List<YamlNode.Pair> pairs = map.pairs();
        YamlNode.Pair pair = pairs.get(index);
        int start = pair.key().span().start();
        if (pairs.size() == 1) {
            replace(map.span().start(), end(map), "{}");
        } else if (map.style() == YamlNode.Style.FLOW) {
            boolean last = index == pairs.size() - 1;
            replace(last ? end(pairs.get(index - 1).value()) : start,
                last ? end(pair.value()) : pairs.get(index + 1).key().span().start(), "");
        } else {
            int line = lineStart(start);
            boolean alone = text.substring(line, start).isBlank();
            int stop = lineStop(Math.max(end(pair.value()), end(pair.key())));
            int next = Math.min(text.length(), text.startsWith("\r\n", stop) ? stop + 2 : stop + 1);
            replace(alone ? line : start, alone ? next : pairs.get(index + 1).key().span().start(), "");
        }
    }
}
