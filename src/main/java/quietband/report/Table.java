package quietband.report;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** A CSV table: one header row in snake case, numbers with twelve digits, empty cells for what does not exist. */
public final class Table {

    private static final CSVFormat FORMAT = CSVFormat.DEFAULT.builder().setRecordSeparator("\n").get();

    private final CSVPrinter printer;
    private final List<String> row = new ArrayList<>();
    private final int columns;

    /** Writes the header. */
    public Table(Writer writer, List<String> header) throws IOException {
        printer = new CSVPrinter(writer, FORMAT);
        printer.printRecord(header);
        columns = header.size();
    }

    /** Writes the header. */
    public Table(Writer writer, String... header) throws IOException {
        this(writer, Arrays.asList(header));
    }

    /** A number as the next cell; empty when it is not finite. */
    public Table cell(double value) {
        row.add(Digits.full(value));
        return this;
    }

    /** A text as the next cell. */
    public Table cell(String value) {
        row.add(value);
        return this;
    }

    /** Ends the row. */
    public void end() throws IOException {
        if (row.size() != columns) {
            throw new IllegalStateException(row.size() + " cells for " + columns + " columns");
        }
        printer.printRecord(row);
        row.clear();
    }
}
