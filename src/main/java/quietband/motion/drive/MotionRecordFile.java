package quietband.motion.drive;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import quietband.model.text.DataText;
import quietband.units.StandardGravity;
import quietband.work.HeapRoom;

/** Reads a record of acceleration, {@code time_s,x_g,y_g,z_g} (any of the axes, any order), and makes it fit to drive a model. */
public final class MotionRecordFile {

    private static final int FEWEST = 8;
    private static final int MOST = 20_000_000;
    // time, three axes, their bends, steps and sorted steps
    private static final int BYTES_PER_ROW = 72;
    private static final double EVEN = 1e-3;
    private static final double GAP = 8;

    private final String name;
    private final double bandHz;
    private final List<String> notes = new ArrayList<>();
    private int[] column = new int[0];
    private int timeColumn = -1;
    private double[] time = new double[1 << 12];
    private final double[][] value = new double[3][];
    private int size;
    private double previous = Double.NEGATIVE_INFINITY;

    private MotionRecordFile(String name, double bandHz) {
        this.name = name;
        this.bandHz = bandHz;
    }

    /**
     * Reads a file.
     *
     * @param fromHz lower end of the band that matters: a record must at least resolve it
     * @throws MotionRecordException when the file cannot serve as a record
     */
    public static MotionRecord read(Path path, double fromHz) {
        MotionRecordFile file = new MotionRecordFile(path.toString(), fromHz);
        try (BufferedReader in = DataText.open(path)) {
            int line = 0;
            boolean header = false;
            for (String text = in.readLine(); text != null; text = in.readLine()) {
                line++;
                String row = text.strip();
                if (row.isEmpty() || row.charAt(0) == '#') {
                    continue;
                }
                if (header) {
                    file.row(row, line);
                } else {
                    file.header(row, line);
                    header = true;
                }
            }
            if (!header) {
                throw file.wrong(0, "is empty", "a header time_s,x_g,y_g,z_g and rows below it are due");
            }
        } catch (IOException e) {
            throw file.wrong(0, "cannot be read", String.valueOf(e.getMessage()));
        }
        return file.recording();
    }

    private MotionRecordException wrong(int line, String found, String advice) {
        return new MotionRecordException(name + (line > 0 ? ":" + line : "") + ": " + found + "; " + advice);
    }

    private void header(String row, int line) {
        String[] cells = row.split(",", -1);
        column = new int[cells.length];
        for (int i = 0; i < cells.length; i++) {
            String cell = cells[i].strip();
            int axis = Arrays.asList("x_g", "y_g", "z_g").indexOf(cell);
            column[i] = axis;
            if (cell.equals("time_s") && timeColumn < 0) {
                timeColumn = i;
            } else if (axis < 0 || value[axis] != null) {
                throw wrong(line, "column '" + cell + "' is " + (axis < 0 && !cell.equals("time_s") ? "unknown" : "there twice"),
                    "columns are time_s and any of x_g, y_g, z_g: time in s, acceleration in g");
            } else {
                value[axis] = new double[1 << 12];
            }
        }
        if (timeColumn < 0 || cells.length < 2) {
            throw wrong(line, "header is '" + row + "'", "time_s and at least one of x_g, y_g, z_g are due");
        }
    }

    private void row(String row, int line) {
        String[] cells = row.split(",", -1);
        if (cells.length != column.length) {
            throw wrong(line, cells.length + " cells where the header has " + column.length, "complete the row");
        }
        if (size == time.length) {
            grow(line);
        }
        double t = number(cells[timeColumn], line, "time_s");
        if (!(t > previous)) {
            throw wrong(line, String.format(Locale.ROOT, "time_s %s does not rise after %.10g", cells[timeColumn].strip(),
                previous), "sort the rows, remove doubles, or see whether columns are swapped");
        }
        previous = t;
        time[size] = t;
        for (int i = 0; i < cells.length; i++) {
            if (i != timeColumn) {
                value[column[i]][size] = number(cells[i], line, "xyz".charAt(column[i]) + "_g");
            }
        }
        size++;
    }

    private void grow(int line) {
        if (size >= MOST) {
            throw wrong(line, "more than " + MOST + " rows", "cut the record");
        }
        if (!HeapRoom.holds(2.0 * size * BYTES_PER_ROW)) {
            throw wrong(line, "more than " + size + " rows, which may take " + 2L * size * BYTES_PER_ROW / 1_000_000 + " MB",
                "cut the record, or allow more memory with java -Xmx");
        }
        time = Arrays.copyOf(time, 2 * size);
        for (int i = 0; i < 3; i++) {
            value[i] = value[i] == null ? null : Arrays.copyOf(value[i], 2 * size);
        }
    }

    private double number(String cell, int line, String of) {
        String text = cell.strip();
        try {
            double v = Double.parseDouble(text);
            if (Double.isFinite(v) && !text.endsWith("f") && !text.endsWith("d")) {
                return v;
            }
        } catch (NumberFormatException e) {
            throw wrong(line, of + " is '" + text + "', not a number", "write a plain number with a point, e.g. 0.125");
        }
        throw wrong(line, of + " is '" + text + "'", "every sample needs a finite number: cut the record there or fill the gap");
    }

    private MotionRecord recording() {
        if (size < FEWEST) {
            throw wrong(0, "has " + size + (size == 1 ? " sample" : " samples"), "at least " + FEWEST + " are due");
        }
        time = Arrays.copyOf(time, size);
        for (int i = 0; i < 3; i++) {
            value[i] = value[i] == null ? null : Arrays.copyOf(value[i], size);
        }
        steps();
        for (int i = 0; i < 3; i++) {
            if (value[i] != null) {
                level("xyz".charAt(i), value[i]);
            }
        }
        return MotionRecord.of(time, value, notes);
    }

    private void steps() {
        double[] step = new double[size - 1];
        for (int i = 0; i < step.length; i++) {
            step[i] = time[i + 1] - time[i];
        }
        double[] sorted = step.clone();
        Arrays.sort(sorted);
        double usual = sorted[sorted.length / 2];
        for (int i = 0; i < step.length; i++) {
            if (step[i] > GAP * usual) {
                throw wrong(0, String.format(Locale.ROOT, "a gap of %.6g s after time %.10g s, where steps are %.6g s", step[i],
                    time[i], usual), "cut the record there: what happened in the gap is not known");
            }
        }
        if (1 / usual < 4 * bandHz) {
            throw wrong(0, String.format(Locale.ROOT, "steps of %.6g s are %.4g samples per second", usual, 1 / usual),
                String.format(Locale.ROOT, "a band from %.4g Hz needs at least %.4g; is time_s in ms?", bandHz, 4 * bandHz));
        }
        if (1 / usual > 1e8) {
            throw wrong(0, String.format(Locale.ROOT, "steps of %.6g s", usual), "is time_s in another unit than s?");
        }
        boolean even = sorted[sorted.length - 1] - sorted[0] <= EVEN * usual;
        notes.add(String.format(Locale.ROOT, "Record of %d samples over %.6g s, %s %.6g a second%s.", size,
            time[size - 1] - time[0], even ? "evenly" : "unevenly, about", 1 / usual,
            even ? ", interpolated by a cubic spline" : ", resampled by a cubic spline"));
    }

    /** Takes out mean and straight drift by least squares, and says so. */
    private void level(char axis, double[] v) {
        double middle = (time[0] + time[size - 1]) / 2;
        double mean = 0;
        double meanT = 0;
        for (int i = 0; i < size; i++) {
            mean += v[i] / size;
            meanT += (time[i] - middle) / size;
        }
        double up = 0;
        double down = 0;
        double square = 0;
        for (int i = 0; i < size; i++) {
            double t = time[i] - middle - meanT;
            up += t * (v[i] - mean);
            down += t * t;
            square += (v[i] - mean) * (v[i] - mean) / size;
        }
        double slope = up / down;
        if (Math.abs(Math.abs(mean) - StandardGravity.M_PER_S2) < 0.05 * StandardGravity.M_PER_S2) {
            throw wrong(0, String.format(Locale.ROOT, "column %c_g has a mean of %.4g", axis, mean),
                "that is gravity in m/s^2: divide the column by 9.80665 to have g");
        }
        if (Math.sqrt(square) > 2000) {
            throw wrong(0, String.format(Locale.ROOT, "column %c_g has %.4g g rms", axis, Math.sqrt(square)),
                "that is beyond any record of vibration: is it in another unit, or swapped with time_s?");
        }
        for (int i = 0; i < size; i++) {
            v[i] -= mean + slope * (time[i] - middle - meanT);
        }
        notes.add(String.format(Locale.ROOT, "%c: mean of %.4g g and drift of %.4g g over the record taken out, %.4g g rms left.",
            axis, mean, slope * (time[size - 1] - time[0]), Math.sqrt(Math.max(0, square - slope * slope * down / size))));
    }
}
