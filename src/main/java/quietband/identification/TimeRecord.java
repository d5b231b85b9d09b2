package quietband.identification;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import quietband.model.text.DataText;
import quietband.model.text.ModelException;
import quietband.units.StandardGravity;
import quietband.work.HeapRoom;

/**
 * A record of drive and response over time: {@code time_s,drive_g,response_g}, or {@code response_ppb} for a fractional frequency.
 *
 * @param file     name
 * @param rate     samples per second
 * @param drive    g, less its mean
 * @param response g or ppb, less its mean
 * @param starts   where a stretch without gap begins; the first is 0
 * @param perG     whether the response is a fractional frequency in ppb
 * @param notes    what is odd about it
 */
record TimeRecord(String file, double rate, double[] drive, double[] response, int[] starts, boolean perG, List<String> notes) {

    private static final int MOST = 50_000_000;
    // time, drive, response, steps and sorted steps
    private static final int BYTES_PER_ROW = 48;
    private static final double EVEN = 0.02;
    private static final double GAP = 1.5;

    /** Whether a file looks like a record over time. */
    static boolean is(Path path) {
        try (BufferedReader in = DataText.open(path)) {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                if (!line.isBlank() && !line.startsWith("#")) {
                    return Arrays.asList(line.strip().split("\\s*,\\s*")).contains("time_s");
                }
            }
            return false;
        } catch (IOException e) {
            // reading it as a table tells what is wrong
            return false;
        }
    }

    /** Reads a file. @throws FitException when it cannot serve */
    static TimeRecord read(Path path) {
        try (BufferedReader in = DataText.open(path)) {
            return new Reader(String.valueOf(path.getFileName())).read(in);
        } catch (IOException e) {
            throw ModelException.of(path.toString(), "cannot be read", String.valueOf(e.getMessage()));
        }
    }

    /** Reads line by line. */
    private static final class Reader {

        private final String name;
        private final int[] column = {-1, -1, -1};
        private boolean perG;
        private int cells;
        private final double[][] value = new double[3][1 << 16];
        private int size;
        private int line;

        Reader(String name) {
            this.name = name;
        }

        TimeRecord read(BufferedReader in) throws IOException {
            for (String text = in.readLine(); text != null; text = in.readLine()) {
                line++;
                if (text.isEmpty() || text.charAt(0) == '#') {
                    continue;
                }
                if (cells == 0) {
                    header(text);
                } else {
                    row(text);
                }
            }
            if (size < 256) {
                throw wrong(0, "has " + size + " samples", "at least 256 are due to see a response");
            }
            for (int c = 0; c < 3; c++) {
                value[c] = Arrays.copyOf(value[c], size);
            }
            return finished();
        }

        private FitException wrong(int at, String found, String advice) {
            return new FitException(name + (at > 0 ? ":" + at : "") + ": " + found + "; " + advice);
        }

        private void header(String text) {
            String[] names = text.strip().split("\\s*,\\s*", -1);
            cells = names.length;
            for (int i = 0; i < cells; i++) {
                int c = List.of("time_s", "drive_g", "response_g").indexOf(names[i].equals("response_ppb") ? "response_g" : names[i]);
                if (c < 0 || column[c] >= 0) {
                    throw wrong(line, "column '" + names[i] + "' is " + (c < 0 ? "unknown" : "there twice"),
                        "columns are time_s, drive_g and response_g (or response_ppb)");
                }
                column[c] = i;
                perG |= names[i].equals("response_ppb");
            }
            for (int c = 0; c < 3; c++) {
                if (column[c] < 0) {
                    throw wrong(line, "column " + List.of("time_s", "drive_g", "response_g").get(c) + " is missing",
                        "columns are time_s, drive_g and response_g (or response_ppb)");
                }
            }
        }

        private void row(String text) {
            if (size == value[0].length) {
                if (size >= MOST) {
                    throw wrong(line, "more than " + MOST + " rows", "cut the record");
                }
                if (!HeapRoom.holds(2.0 * size * BYTES_PER_ROW)) {
                    throw wrong(line, "more than " + size + " rows, which may take " + 2L * size * BYTES_PER_ROW / 1_000_000 + " MB",
                        "cut the record, or allow more memory with java -Xmx");
                }
                for (int c = 0; c < 3; c++) {
                    value[c] = Arrays.copyOf(value[c], 2 * size);
                }
            }
            int from = 0;
            int cell = 0;
            while (cell < cells) {
                int to = text.indexOf(',', from);
                boolean last = to < 0;
                if (last != (cell == cells - 1)) {
                    throw wrong(line, "not " + cells + " cells as in the header", "complete the row");
                }
                String part = text.substring(from, last ? text.length() : to);
                for (int c = 0; c < 3; c++) {
                    if (column[c] == cell) {
                        value[c][size] = number(part);
                    }
                }
                from = to + 1;
                cell++;
            }
            if (size > 0 && !(value[0][size] > value[0][size - 1])) {
                throw wrong(line, "time_s " + value[0][size] + " does not rise", "sort the rows and remove doubles");
            }
            size++;
        }

        private double number(String text) {
            try {
                double v = Double.parseDouble(text.strip());
                if (Double.isFinite(v)) {
                    return v;
                }
            } catch (NumberFormatException e) {
                throw wrong(line, "'" + text.strip() + "' is no number", "write a plain number with a point, or leave the row out");
            }
            throw wrong(line, "'" + text.strip() + "' is not finite", "leave the row out");
        }

        private TimeRecord finished() {
            double[] step = new double[size - 1];
            for (int i = 0; i < step.length; i++) {
                step[i] = value[0][i + 1] - value[0][i];
            }
            double[] sorted = step.clone();
            Arrays.sort(sorted);
            double usual = sorted[sorted.length / 2];
            List<Integer> starts = new ArrayList<>(List.of(0));
            List<String> notes = new ArrayList<>();
            int uneven = 0;
            for (int i = 0; i < step.length; i++) {
                if (step[i] > GAP * usual) {
                    starts.add(i + 1);
                } else {
                    uneven += Math.abs(step[i] - usual) > EVEN * usual ? 1 : 0;
                }
            }
            if (uneven > step.length / 100 || starts.size() > step.length / 100) {
                throw wrong(0, String.format(Locale.ROOT, "steps of time_s differ by more than 2 %% in %d places (usual step %.6g s)",
                    uneven + starts.size() - 1, usual), "resample it evenly first");
            }
            if (starts.size() > 1) {
                notes.add(String.format(Locale.ROOT, "%s: %d gap%s in time, the first after %.6g s: no segment reaches across", name,
                    starts.size() - 1, starts.size() > 2 ? "s" : "", value[0][starts.get(1) - 1]));
            }
            level("drive_g", value[1]);
            level(perG ? "response_ppb" : "response_g", value[2]);
            // the mean step over the first stretch is better than the median where times are rounded
            int end = starts.size() > 1 ? starts.get(1) - 1 : size - 1;
            double mean = end > 100 ? (value[0][end] - value[0][0]) / end : usual;
            return new TimeRecord(name, 1 / mean, value[1], value[2], starts.stream().mapToInt(i -> i).toArray(), perG, notes);
        }

        private void level(String of, double[] v) {
            double mean = 0;
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (double x : v) {
                mean += x / v.length;
                low = Math.min(low, x);
                high = Math.max(high, x);
            }
            if (high - low <= 1e-12 * Math.max(Math.abs(high), Math.abs(low))) {
                throw wrong(0, String.format(Locale.ROOT, "column %s is %.6g throughout", of, mean), "was the sensor connected?");
            }
            if (of.endsWith("_g") && Math.abs(Math.abs(mean) - StandardGravity.M_PER_S2) < 0.05 * StandardGravity.M_PER_S2) {
                throw wrong(0, String.format(Locale.ROOT, "column %s has a mean of %.4g", of, mean),
                    "that is gravity in m/s^2: divide the column by 9.80665 to have g");
            }
            for (int i = 0; i < v.length; i++) {
                v[i] -= mean;
            }
        }
    }
}
