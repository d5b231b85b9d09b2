package quietband.lot;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
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
    private static final double LARGEST = 1e15;
    private static final double[] TENS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};

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
        if (!Files.isRegularFile(path)) {
            throw ModelException.of(shown, Files.exists(path) ? "is no regular file" : "there is no such file",
                "name a lot: serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g");
        }
        LotReader reader = new LotReader(shown);
        MessageDigest digest = sha256();
        try (BufferedReader text = new BufferedReader(new InputStreamReader(new DigestInputStream(Files.newInputStream(path), digest),
            StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT))); CSVParser parser = CSVParser.parse(withoutMark(text), FORMAT)) {
            reader.rows(parser);
        } catch (CharacterCodingException e) {
            throw ModelException.of(shown, "is not UTF-8 text", "save it as UTF-8; binary files cannot be read");
        } catch (CSVException | UncheckedIOException e) {
            boolean coding = e.getCause() instanceof CharacterCodingException;
            throw ModelException.of(shown, coding ? "is not UTF-8 text" : "is not valid CSV: " + e.getMessage(),
                coding ? "save it as UTF-8; binary files cannot be read" : "check quotes");
        } catch (IOException e) {
            throw ModelException.of(shown, "cannot be read", String.valueOf(e.getMessage()));
        }
        Path name = path.getFileName();
        return reader.lot(name == null ? shown : name.toString(), HexFormat.of().formatHex(digest.digest()));
    }

    /** What stands behind a byte-order mark, or all where there is none. */
    private static Reader withoutMark(BufferedReader text) throws IOException {
        text.mark(1);
        if (text.read() != '\ufeff') {
            text.reset();
        }
        return text;
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
        double quick = quick(text);
        if (!Double.isNaN(quick)) {
            return quick;
        }
        boolean plain = !text.isEmpty() && text.length() <= 40;
        for (int i = 0; i < text.length() && plain; i++) {
            char c = text.charAt(i);
            plain = c >= '0' && c <= '9' || c == '.' || c == '-' || c == '+' || c == 'e' || c == 'E';
        }
        double v = Double.NaN;
        if (plain) {
            try {
                v = Double.parseDouble(text);
            } catch (NumberFormatException e) {
                v = Double.NaN;
            }
        }
        if (!(Math.abs(v) <= LARGEST)) {
            say(wrong, text.isEmpty() ? column + " has no number"
                : column + " '" + (text.length() > 24 ? text.substring(0, 24) + "..." : text) + "' is "
                    + (Double.isFinite(v) ? "beyond any resonator" : "no finite number"));
            return 0;
        }
        return v;
    }

    /** A short decimal number without exponent, exact: whole digits below 2^53 over a power of ten up to 1e15; else NaN. */
    private static double quick(String text) {
        int n = text.length();
        if (n == 0 || n > 16) {
            return Double.NaN;
        }
        boolean negative = text.charAt(0) == '-';
        long digits = 0;
        int point = -1;
        for (int i = negative ? 1 : 0; i < n; i++) {
            char c = text.charAt(i);
            if (c >= '0' && c <= '9') {
                digits = 10 * digits + c - '0';
            } else if (c == '.' && point < 0) {
                point = i;
            } else {
                return Double.NaN;
            }
        }
        int places = point < 0 ? 0 : n - 1 - point;
        if (digits >= 1L << 53 || n - (negative ? 1 : 0) - (point < 0 ? 0 : 1) == 0) {
            return Double.NaN;
        }
        double value = digits / TENS[places];
        return negative ? -value : value;
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
