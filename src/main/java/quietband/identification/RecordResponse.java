package quietband.identification;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import quietband.identification.MeasuredResponse.Kind;
import quietband.model.Axis;
import quietband.spectrum.Welch;

/**
 * The response in a record over time: Welch's method, H = S_dr/S_dd, with the uncertainty that the coherence leaves.
 *
 * <p>Standard uncertainty of each part of H as a share of |H|: sqrt((1 - c)/(2 n c)) with coherence c and n averages (Bendat and
 * Piersol, Random Data, ch. 9; from memory). Every second line is taken: neighbours under a Hann window share 4/9 of their
 * noise, next but ones 1/36. Lines closer than a thousandth of their frequency are averaged.
 *
 * @param response     the numbers
 * @param resolutionHz distance of the lines
 * @param notes        what is odd about the record, and how it was cut up
 */
public record RecordResponse(MeasuredResponse response, double resolutionHz, List<String> notes) {

    private static final int SEGMENTS = 16;
    private static final double FINEST_HZ = 0.2;
    private static final double LEAST_COHERENCE = 0.1;
    private static final double SHARED = Math.sqrt(1 + 2.0 / 36);
    private static final double GROUP = 1000;
    private static final int SMOOTH = 4;

    /** Whether a file looks like a record over time. */
    public static boolean isRecord(Path path) {
        return TimeRecord.is(path);
    }

    /**
     * Reads a record and works the response out.
     *
     * @param fromHz lower end of the band that matters
     * @param toHz   upper end
     * @throws FitException when the record cannot serve
     */
    public static RecordResponse read(Path path, Axis axis, double fromHz, double toHz) {
        TimeRecord record = TimeRecord.read(path);
        int longest = 0;
        for (int i = 0; i < record.starts().length; i++) {
            int end = i + 1 < record.starts().length ? record.starts()[i + 1] : record.drive().length;
            longest = Math.max(longest, end - record.starts()[i]);
        }
        int size = 64;
        while (2 * size <= record.drive().length / SEGMENTS && 2 * size <= longest && record.rate() / (2 * size) >= FINEST_HZ) {
            size *= 2;
        }
        Welch welch = new Welch(2, 1, size, record.rate());
        double[] pair = new double[2];
        int next = 0;
        for (int i = 0; i < record.drive().length; i++) {
            if (next < record.starts().length && record.starts()[next] == i) {
                welch.cut();
                next++;
            }
            pair[0] = record.drive()[i];
            pair[1] = record.response()[i];
            welch.push(pair);
        }
        return new RecordResponse(new Lines(record, welch, axis).between(fromHz, Math.min(toHz, 0.4 * record.rate())),
            welch.resolutionHz(), notes(record, welch));
    }

    private static List<String> notes(TimeRecord record, Welch welch) {
        List<String> notes = new ArrayList<>(record.notes());
        if (welch.segments() < SEGMENTS) {
            notes.add(String.format(Locale.ROOT, "%s: only %d segments could be averaged: uncertainties are rough", record.file(),
                welch.segments()));
        }
        return notes;
    }

    /** Lines of a response. */
    private record Lines(TimeRecord record, Welch welch, Axis axis) {

        MeasuredResponse between(double fromHz, double toHz) {
            double n = welch.degreesOfFreedom() / 2;
            List<double[]> lines = new ArrayList<>();
            // unrelated channels exceed this at one line in a hundred: P(c > x) = (1 - x)^(n - 1)
            double least = Math.max(LEAST_COHERENCE, 1 - Math.pow(0.01, 1 / Math.max(1, n - 1)));
            int looked = 0;
            for (int k = Math.max(2, (int) Math.ceil(fromHz / welch.resolutionHz())); k * welch.resolutionHz() <= toHz; k += 2) {
                double c = Math.min(1 - 1e-12, welch.coherence(0, 1, k));
                looked++;
                if (c > least) {
                    lines.add(new double[] {k * welch.resolutionHz(), welch.responseRe(0, 1, k), welch.responseIm(0, 1, k),
                        SHARED * Math.sqrt((1 - c) / (2 * n * c))});
                }
            }
            if (lines.size() < Math.max(4, looked / 20)) {
                throw new FitException(String.format(Locale.ROOT, "%s: between %.4g and %.4g Hz drive and response have too little in "
                    + "common (%d usable lines); is the drive the right channel, strong enough, sampled fast enough (%.6g a second)?",
                    record.file(), fromHz, toHz, lines.size(), record.rate()));
            }
            return response(grouped(smooth(lines)));
        }

        /** Uncertainties as the geometric mean of neighbours, so that they do not follow the noise of their own line. */
        private static List<double[]> smooth(List<double[]> lines) {
            List<double[]> smooth = new ArrayList<>();
            for (int i = 0; i < lines.size(); i++) {
                double sum = 0;
                int count = 0;
                for (int j = Math.max(0, i - SMOOTH); j <= Math.min(lines.size() - 1, i + SMOOTH); j++) {
                    sum += Math.log(Math.max(lines.get(j)[3], 1e-9));
                    count++;
                }
                double[] line = lines.get(i).clone();
                line[3] = Math.exp(sum / count);
                smooth.add(line);
            }
            return smooth;
        }

        private static List<double[]> grouped(List<double[]> lines) {
            List<double[]> groups = new ArrayList<>();
            for (int i = 0; i < lines.size();) {
                int end = i + 1;
                while (end < lines.size() && lines.get(end)[0] - lines.get(i)[0] <= lines.get(i)[0] / GROUP) {
                    end++;
                }
                double[] sum = new double[4];
                for (int j = i; j < end; j++) {
                    for (int c = 0; c < 4; c++) {
                        sum[c] += lines.get(j)[c] / (end - i);
                    }
                }
                sum[3] /= Math.sqrt(end - i);
                groups.add(sum);
                i = end;
            }
            return groups;
        }

        private MeasuredResponse response(List<double[]> lines) {
            double unit = record.perG() ? 1e-9 : 1;
            double[][] v = new double[4][lines.size()];
            for (int i = 0; i < lines.size(); i++) {
                double[] l = lines.get(i);
                v[0][i] = l[0];
                v[1][i] = unit * Math.hypot(l[1], l[2]);
                v[2][i] = Math.atan2(l[2], l[1]);
                v[3][i] = l[3];
            }
            Map<Axis, MeasuredResponse.Curve> axes = new EnumMap<>(Axis.class);
            axes.put(axis, new MeasuredResponse.Curve(v[1], Optional.of(v[2]), Optional.of(v[3])));
            return new MeasuredResponse(record.perG() ? Kind.SENSITIVITY : Kind.TRANSMISSIBILITY, v[0], axes);
        }
    }
}
