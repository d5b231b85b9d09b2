package quietband.cli.terminal;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;

/**
 * What reaches a terminal: control characters, which a title, a name or a file's name may hold, stand as U+FFFD, so that none of them
 * moves the cursor, hides text or turns it round. A carriage return counts only where a line begins or ends.
 */
public final class VisibleText extends FilterWriter {

    private static final char SHOWN = '\ufffd';

    public VisibleText(Writer out) {
        super(out);
    }

    @Override
    public void write(int c) throws IOException {
        write(new char[] {(char) c}, 0, 1);
    }

    @Override
    public void write(String text, int from, int length) throws IOException {
        write(text.toCharArray(), from, length);
    }

    @Override
    public void write(char[] text, int from, int length) throws IOException {
        char[] shown = new char[length];
        for (int i = 0; i < length; i++) {
            char c = text[from + i];
            boolean edge = i == 0 || i == length - 1 || text[from + i + 1] == '\n';
            shown[i] = c == '\r' && edge || !hidden(c) ? c : SHOWN;
        }
        out.write(shown, 0, length);
    }

    private static boolean hidden(char c) {
        boolean direction = c == '\u061c' || c >= '\u200e' && c <= '\u200f' || c >= '\u202a' && c <= '\u202e'
            || c >= '\u2066' && c <= '\u2069';
        return Character.isISOControl(c) && c != '\n' && c != '\t' || direction || c == '\u2028' || c == '\u2029';
    }
}
