package quietband.model.text;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import quietband.units.Amounts;
import quietband.units.Dimension;
import quietband.units.WrongAmountException;

/**
 * A CSV file: one header row, comma-separated rows, lines that start with # are comments; a byte-order mark and CRLF
 * are tolerated. Problems carry the line; they are collected until {@link #check()}.
 */
public final class CsvTable {

    private static final int MOST_BYTES = 20_000_000;
    private static final Pattern LINE = Pattern.compile("[Ll]ine:? ?(\\d{1,9})");
    private static final CSVFormat FORMAT = CSVFormat.RFC4180.builder().setCommentMarker('#')
        .setIgnoreEmptyLines(true).setIgnoreSurroundingSpaces(true).setTrim(true).get();

    private final FileProblems problems;
    private final List<String> header;
    private final int headerLine;
    private final List<String[]> rows = new ArrayList<>();
    private final List<Integer> lines = new ArrayList<>();

    private CsvTable(TextFile file) {
        this.problems = new FileProblems(file.shown());
        List<String> first = null;
        int firstLine = 1;
        try (CSVParser parser = CSVParser.parse(file.text(), FORMAT)) {
            for (CSVRecord row : parser) {
                int line = (int) parser.getCurrentLineNumber();
                if (first == null) {
                    first = List.of(row.values());
                    firstLine = line;
                } else if (row.size() == first.size()) {
                    rows.add(row.values());
                    lines.add(line);
                } else {
                    tell(line, "", "has " + row.size() + " cells", "the header has " + first.size());
                }
            }
        } catch (CSVException | UncheckedIOException e) {
            throw invalid(file.shown(), e);
        } catch (IOException e) {
            throw ModelException.of(file.shown(), "cannot be read", String.valueOf(e.getMessage()));
        }
        if (first == null) {
            throw ModelException.of(file.shown(), "is empty", "a header row and rows below it are due");
        }
        this.header = first;
        this.headerLine = firstLine;
    }

    /** What a reader of CSV could not make sense of, with the line it tells. */
    public static ModelException invalid(String shown, Exception e) {
        String text = String.valueOf(e.getMessage());
        Matcher line = LINE.matcher(text);
        return new ModelException(List.of(new FileProblem(shown, line.find() ? Integer.parseInt(line.group(1)) : 0, 0, "",
            "is not valid CSV: " + (text.contains("EOF") ? "a quote is never closed" : "text beside a cell in quotes"), "check quotes")));
    }

    /** Reads a file. @throws ModelException when it is missing, too large, no text or no CSV */
    public static CsvTable read(Path path) {
        return of(TextFile.read(path, path.toString(), MOST_BYTES));
    }

    public static CsvTable of(TextFile file) {
        return new CsvTable(file);
    }

    /** Tells a problem unless the header is exactly these columns, followed by any number of the optional ones. */
    public CsvTable exactly(List<String> columns, List<String> optional) {
        boolean starts = header.size() >= columns.size() && header.subList(0, columns.size()).equals(columns);
        boolean ends = starts && optional.containsAll(header.subList(columns.size(), header.size()))
            && new HashSet<>(header).size() == header.size();
        if (!ends) {
            tell(headerLine, "", "header is '" + YamlNode.shorten(String.join(",", header)) + "'",
                "expected " + String.join(",", columns) + (optional.isEmpty() ? "" : "[," + String.join(",", optional)
                    + "]"));
            check();
        }
        return this;
    }

    /** Tells a problem for each needed column that is missing and each column that is neither needed nor optional. */
    public CsvTable columns(List<String> needed, List<String> optional) {
        List<String> known = new ArrayList<>(needed);
        known.addAll(optional);
        Set<String> seen = new HashSet<>();
        for (String name : header) {
            if (!known.contains(name)) {
                tell(headerLine, YamlNode.shorten(name), "unknown column",
                    SpellingSuggestion.advice(name, known, "known: " + String.join(", ", known)));
            } else if (!seen.add(name)) {
                tell(headerLine, name, "column stands twice", "keep one");
            }
        }
        for (String name : needed) {
            if (!header.contains(name)) {
                tell(headerLine, name, "column is missing", "the header has " + String.join(",", header));
            }
        }
        check();
        return this;
    }

    /** Column names as in the file. */
    public List<String> header() {
        return header;
    }

    /** Whether there is such a column. */
    public boolean has(String column) {
        return header.contains(column);
    }

    /** Number of rows below the header. */
    public int size() {
        return rows.size();
    }

    /** Line of a row in the file, from 1. */
    public int line(int row) {
        return lines.get(row);
    }

    /** Text of a cell; empty where the column is missing. */
    public String text(int row, String column) {
        int index = header.indexOf(column);
        return index < 0 ? "" : rows.get(row)[index];
    }

    /** A name or remark from a cell, which a table of a result may repeat; told when a spreadsheet took it for a formula. */
    public String label(int row, String column) {
        String text = text(row, column);
        if (CellText.formula(text)) {
            tell(line(row), column, CellText.found(text), CellText.ADVICE);
        }
        return text;
    }

    /** A finite number from a cell; NaN, with a problem told, when there is none. */
    public double number(int row, String column) {
        try {
            return Amounts.read(text(row, column), Dimension.NUMBER);
        } catch (WrongAmountException e) {
            boolean empty = text(row, column).isEmpty();
            tell(line(row), column, empty ? "has no number" : e.found(), empty ? "write one" : "write a plain number");
            return Double.NaN;
        }
    }

    /** A whole column of finite numbers; NaN, with a problem told, where there is none. */
    public double[] numbers(String column) {
        double[] result = new double[size()];
        for (int i = 0; i < result.length; i++) {
            result[i] = number(i, column);
        }
        return result;
    }

    /** Collects a problem at a line. */
    public void tell(int line, String column, String found, String advice) {
        problems.add(new FileProblem(problems.file(), line, 0, column, found, advice));
    }

    /** Throws when any problem was told. @throws ModelException with all of them */
    public void check() {
        problems.check();
    }
}
