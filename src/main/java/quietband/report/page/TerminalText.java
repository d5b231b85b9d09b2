package quietband.report.page;

import java.util.List;

/** Text for a terminal of 80 columns. */
public final class TerminalText {

    /** Columns of a line. */
    public static final int WIDTH = 80;

    private TerminalText() { }

    /** Adds words behind a head, what does not fit below it, indented as far. */
    public static void hang(String head, String text, List<String> lines) {
        String indent = " ".repeat(head.length());
        String line = head;
        boolean fresh = true;
        for (String word : text.split(" ")) {
            if (!fresh && line.length() + 1 + word.length() > WIDTH) {
                lines.add(line);
                line = indent + word;
            } else {
                line = fresh ? line + word : line + " " + word;
            }
            fresh = false;
        }
        lines.add(line);
    }

    /** One line, cut at the end when it is too long. */
    public static String cut(String text) {
        return text.length() <= WIDTH ? text : text.substring(0, WIDTH - 3) + "...";
    }

    /** Lines of at most 80 columns; what is longer goes on below, indented by two. */
    public static String wrapped(String text) {
        StringBuilder out = new StringBuilder();
        for (String line : text.split("\n", -1)) {
            String rest = line;
            while (rest.length() > WIDTH) {
                int cut = rest.lastIndexOf(' ', WIDTH);
                cut = cut <= 4 ? WIDTH : cut;
                out.append(rest, 0, cut).append("\n");
                rest = "  " + rest.substring(cut).strip();
            }
            out.append(rest).append("\n");
        }
        return out.substring(0, out.length() - 1);
    }
}
