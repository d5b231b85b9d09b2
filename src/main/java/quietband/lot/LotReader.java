package quietband.lot;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import quietband.model.text.CellText;
import quietband.model.text.CsvTable;
import quietband.model.text.DataText;
import quietband.model.text.ModelException;

/**
 * Reads a measured lot row by row: {@code serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g} and, optional, a standard
 * uncertainty {@code x_uncertainty_ppb_per_g} and so on for all three; other columns are left alone. A row with something
 * wrong becomes a bad row, never silence; only a file or header that cannot serve at all is refused.
 */
public final class LotReader {

    private static final CSVFormat FORMAT = CSVFormat.RFC4180.builder().setCommentMarker('#')
        .setIgnoreEmptyLines(true).setIgnoreSurroundingSpaces(true).setTrim(true).get();
    private static final String[] AXES = {"x", "y", "z"};
    /** ppb/g; squares and products of larger ones have no number. */
    private static final double LARGEST = 1e30;

    private final String shown;
    private int serialColumn;
    private int width;
    private final int[] valueColumn = new int[3];
    private final int[] sigmaColumn = new int[3];
    private boolean withSigma;
    private final List<String> serials = new ArrayList<>();
    private final Map<String, Integer> seen = new HashMap<>();
    private int[] lines = new int[1024];
    private final double[][] value = new double[3][1024];
    private final double[][] sigma = new double[3][1024];
    private final List<MeasuredLot.BadRow> bad = new ArrayList<>();

    private LotReader(String shown) {
        this.shown = shown;
    }

    /** Reads a file. @throws ModelException when it is missing, no text, no CSV or has no such header */
    public static MeasuredLot read(Path path) {
        String shown = path.toString();
        DataText.requireRegular(path, shown, "name a lot: serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g");
        LotReader reader = new LotReader(shown);
        MessageDigest digest = sha256();
        try (DataText text = new DataText(new DigestInputStream(Files.newInputStream(path), digest), shown);
             CSVParser parser = CSVParser.parse(text, FORMAT)) {
            reader.rows(parser);
        } catch (AccessDeniedException e) {
            throw ModelException.of(shown, "may not be read", "check its permissions");
        } catch (CSVException | UncheckedIOException e) {
            throw CsvTable.invalid(shown, e);
        } catch (IOException e) {
            throw ModelException.of(shown, "cannot be read", String.valueOf(e.getMessage()));
        }
        Path name = path.getFileName();
        return reader.lot(name == null ? shown : name.toString(), HexFormat.of().formatHex(digest.digest()));
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private void rows(CSVParser parser) {
        boolean header = false;
        for (CSVRecord row : parser) {
            if (header) {
                row(row, (int) parser.getCurrentLineNumber());
            } else {
                header(row.values());
                header = true;
            }
        }
        if (!header) {
            throw ModelException.of(shown, "is empty", "a header serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g and rows below "
                + "it are due");
        }
    }

    private void header(String... cells) {
        List<String> names = List.of(cells);
        width = names.size();
        serialColumn = due(names, "serial");
        withSigma = names.stream().anyMatch(n -> n.endsWith("_uncertainty_ppb_per_g"));
        for (int i = 0; i < 3; i++) {
            valueColumn[i] = due(names, AXES[i] + "_ppb_per_g");
            sigmaColumn[i] = withSigma ? due(names, AXES[i] + "_uncertainty_ppb_per_g") : -1;
        }
    }

    private int due(List<String> names, String name) {
        int at = names.indexOf(name);
        if (at < 0 || names.lastIndexOf(name) != at) {
            throw ModelException.of(shown, "column " + name + (at < 0 ? " is missing" : " stands twice"), "the header has "
                + String.join(",", names));
        }
        return at;
    }

    private void row(CSVRecord row, int line) {
        String serial = row.size() > serialColumn ? row.get(serialColumn) : "";
        StringBuilder wrong = new StringBuilder();
        if (row.size() != width) {
            wrong.append(row.size()).append(" cells where the header has ").append(width);
        } else if (serial.isEmpty()) {
            wrong.append("no serial");
        } else if (CellText.formula(serial)) {
            wrong.append("serial ").append(CellText.found(serial)).append(", ").append(CellText.ADVICE);
        }
        int at = serials.size();
        grow(at);
        for (int i = 0; i < 3 && row.size() == width; i++) {
            value[i][at] = number(row.get(valueColumn[i]), AXES[i] + "_ppb_per_g", wrong);
            if (withSigma) {
                sigma[i][at] = number(row.get(sigmaColumn[i]), AXES[i] + "_uncertainty_ppb_per_g", wrong);
                if (sigma[i][at] < 0) {
                    say(wrong, AXES[i] + "_uncertainty_ppb_per_g is below 0");
                }
            }
        }
        Integer before = serial.isEmpty() ? null : seen.putIfAbsent(serial, line);
        boolean usable = wrong.isEmpty();
        if (before != null) {
            say(wrong, "serial '" + serial + "' stands in line " + before + " already");
        }
        if (!wrong.isEmpty()) {
            bad.add(new MeasuredLot.BadRow(line, CellText.formula(serial) ? "" : serial, usable, wrong.toString()));
        }
        if (usable) {
            serials.add(serial);
            lines[at] = line;
        }
    }

    private static void say(StringBuilder wrong, String what) {
        wrong.append(wrong.isEmpty() ? "" : ", ").append(what);
    }

    private void grow(int at) {
        if (at < lines.length) {
            return;
        }
        int larger = lines.length + (lines.length >> 1);
        lines = Arrays.copyOf(lines, larger);
        for (int i = 0; i < 3; i++) {
            value[i] = Arrays.copyOf(value[i], larger);
            sigma[i] = Arrays.copyOf(sigma[i], withSigma ? larger : 0);
        }
    }

    /** A finite decimal number; 0 with something said when it is none. */
    private static double number(String text, String column, StringBuilder wrong) {
        boolean plain = text.length() <= 40 && text.chars().allMatch(c -> c >= '0' && c <= '9' || ".-+eE".indexOf(c) >= 0);
        double v = Double.NaN;
        try {
            v = plain ? Double.parseDouble(text) : v;
        } catch (NumberFormatException e) {
            v = Double.NaN;
        }
        if (!(Math.abs(v) <= LARGEST)) {
            say(wrong, text.isEmpty() ? column + " has no number"
                : column + " '" + (text.length() > 24 ? text.substring(0, 24) + "..." : text) + "' is "
                    + (Double.isFinite(v) ? "beyond any resonator" : "no finite number"));
            return 0;
        }
        return v;
    }

    private MeasuredLot lot(String name, String hash) {
        int n = serials.size();
        double[][] v = new double[3][];
        double[][] s = new double[3][];
        for (int i = 0; i < 3; i++) {
            v[i] = Arrays.copyOf(value[i], n);
            s[i] = withSigma ? Arrays.copyOf(sigma[i], n) : null;
        }
        return new MeasuredLot(name, hash, serials.toArray(new String[0]), Arrays.copyOf(lines, n), v,
            withSigma ? Optional.of(s) : Optional.empty(), bad);
    }
}
