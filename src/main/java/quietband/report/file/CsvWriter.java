package quietband.report.file;

import java.io.IOException;
import java.io.Writer;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;

/** A CSV table: one header row in snake case, numbers with twelve digits, empty cells for what does not exist. */
public final class CsvWriter {

    private static final CSVFormat FORMAT = CSVFormat.DEFAULT.builder().setRecordSeparator("\n").get();
    private static final int MOST_KNOWN = 1000;

    private final Writer writer;
    private final int columns;
    private final Map<String, String> known = new HashMap<>();
    private char[] row = new char[512];
    private int length;
    private int cells;
    // what repeats from row to row, as a frequency does, is not formatted again
    private final char[] lastText = new char[NumberFormat.LONGEST];
    private double last = Double.NaN;
    private int lastLength;

    /** Without a header: rows that go on a table. */
    public CsvWriter(Writer writer, int columns) {
        this.writer = writer;
        this.columns = columns;
    }

    /** Writes the header. */
    public CsvWriter(Writer writer, List<String> header) throws IOException {
        this(writer, header.size());
        for (String name : header) {
            cell(name);
        }
        end();
    }

    /** A number as the next cell; empty when it is not finite. A number needs no quotes. */
    public CsvWriter cell(double value) {
        next(NumberFormat.LONGEST);
        if (value != last) {
            lastLength = Double.isFinite(value) ? NumberFormat.write(lastText, 0, value, false) : 0;
            last = value;
        }
        System.arraycopy(lastText, 0, row, length, lastLength);
        length += lastLength;
        return this;
    }

    /** A text as the next cell, quoted where it has to be. */
    public CsvWriter cell(String value) {
        String text = plain(value) ? value : known.size() > MOST_KNOWN ? FORMAT.format(value)
            : known.computeIfAbsent(value, FORMAT::format);
        next(text.length());
        text.getChars(0, text.length(), row, length);
        length += text.length();
        return this;
    }

    /** A whole number as the next cell, with its digits alone. */
    public CsvWriter whole(long value) {
        return cell(Long.toString(value));
    }

    /** {@code yes} or {@code no} as the next cell. */
    public CsvWriter yes(boolean value) {
        return cell(value ? "yes" : "no");
    }

    /** A text as the next cell; nothing at all when it is empty, in the first cell too. */
    public CsvWriter known(String value) {
        return value.isEmpty() ? cell(Double.NaN) : cell(value);
    }

    /** Some numbers as the next cells, each times a factor. */
    public CsvWriter cells(double factor, double... values) {
        for (double v : values) {
            cell(factor * v);
        }
        return this;
    }

    /** Letters, digits, points, underscores, and hyphens and spaces within, or nothing after another cell: needs no quotes. */
    private boolean plain(String value) {
        for (int i = 0; i < value.length(); i++) {
            char c = value.charAt(i);
            boolean word = c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c == '_' || c == '.';
            boolean inner = (c == '-' || c == ' ') && i > 0 && i < value.length() - 1;
            if (!word && !inner) {
                return false;
            }
        }
        return !value.isEmpty() || cells > 0;
    }

    /** Starts a cell: the comma, and room for some characters and what may follow. */
    private void next(int room) {
        if (row.length < length + room + 2) {
            row = Arrays.copyOf(row, 2 * row.length + room);
        }
        if (cells++ > 0) {
            row[length++] = ',';
        }
    }

    /** Ends the row. */
    public void end() throws IOException {
        if (cells != columns) {
            throw new IllegalStateException(cells + " cells for " + columns + " columns");
        }
        row[length++] = '\n';
        writer.write(row, 0, length);
        length = 0;
        cells = 0;
    }
}
