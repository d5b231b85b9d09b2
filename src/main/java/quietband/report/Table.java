package quietband.report;

import java.io.IOException;
import java.io.Writer;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.csv.CSVFormat;

/** A CSV table: one header row in snake case, numbers with twelve digits, empty cells for what does not exist. */
public final class Table {

    private static final CSVFormat FORMAT = CSVFormat.DEFAULT.builder().setRecordSeparator("\n").get();

    private final Writer writer;
    private final StringBuilder row = new StringBuilder(256);
    private final int columns;
    private int cells;

    /** Writes the header. */
    public Table(Writer writer, List<String> header) throws IOException {
        this.writer = writer;
        columns = header.size();
        for (String name : header) {
            cell(name);
        }
        end();
    }

    /** Writes the header. */
    public Table(Writer writer, String... header) throws IOException {
        this(writer, Arrays.asList(header));
    }

    /** A number as the next cell; empty when it is not finite. A number needs no quotes. */
    public Table cell(double value) {
        next().append(Digits.full(value));
        return this;
    }

    /** A text as the next cell, quoted where it has to be. */
    public Table cell(String value) {
        next().append(plain(value) ? value : FORMAT.format(value));
        return this;
    }

    /** Letters, digits, points and underscores only, as most cells are. */
    private static boolean plain(String value) {
        for (int i = 0; i < value.length(); i++) {
            char c = value.charAt(i);
            if (!(c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c == '_' || c == '.')) {
                return false;
            }
        }
        return !value.isEmpty();
    }

    private StringBuilder next() {
        if (cells++ > 0) {
            row.append(',');
        }
        return row;
    }

    /** Ends the row. */
    public void end() throws IOException {
        if (cells != columns) {
            throw new IllegalStateException(cells + " cells for " + columns + " columns");
        }
        writer.append(row.append('\n'));
        row.setLength(0);
        cells = 0;
    }
}
