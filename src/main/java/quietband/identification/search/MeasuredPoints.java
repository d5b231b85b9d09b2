package quietband.identification.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import quietband.identification.MeasuredFile;
import quietband.identification.MeasuredResponse;
import quietband.model.Axis;

/**
 * Every measured number of all files in one row, rising in frequency.
 *
 * @param series    the curves they come from
 * @param frequency Hz
 * @param of        which curve
 * @param magnitude ratio, or 1/g
 * @param phase     rad; NaN where none was measured
 * @param stated    one standard uncertainty as a share of the magnitude; NaN where none was stated
 */
public record MeasuredPoints(List<Series> series, double[] frequency, int[] of, double[] magnitude, double[] phase, double[] stated) {

    /** One axis of one file; stated when its uncertainty is. */
    public record Series(MeasuredFile source, Axis axis, boolean phased, boolean stated) {

        public String label() {
            return source.file() + ", axis " + axis.letter();
        }
    }

    /** All curves of some files. */
    public static MeasuredPoints of(List<MeasuredFile> sources) {
        List<Series> series = new ArrayList<>();
        List<double[]> rows = new ArrayList<>();
        for (MeasuredFile source : sources) {
            for (Map.Entry<Axis, MeasuredResponse.Curve> e : source.response().axes().entrySet()) {
                MeasuredResponse.Curve c = e.getValue();
                double[] error = usable(c);
                double[] f = source.response().frequencyHz();
                for (int i = 0; i < f.length; i++) {
                    rows.add(new double[] {f[i], series.size(), c.magnitude()[i],
                        c.phase().isPresent() ? c.phase().get()[i] : Double.NaN, error == null ? Double.NaN : error[i]});
                }
                series.add(new Series(source, e.getKey(), c.phase().isPresent(), error != null));
            }
        }
        rows.sort(Comparator.comparingDouble((double[] r) -> r[0]).thenComparingDouble(r -> r[1]));
        return of(series, rows);
    }

    /** Stated uncertainties; a 0 among others is taken as the least of them, and only zeros as none stated. */
    private static double[] usable(MeasuredResponse.Curve c) {
        if (c.relativeError().isEmpty()) {
            return null;
        }
        double[] e = c.relativeError().get();
        OptionalDouble least = Arrays.stream(e).filter(v -> v > 0).min();
        return least.isPresent() ? Arrays.stream(e).map(v -> Math.max(v, least.getAsDouble())).toArray() : null;
    }

    private static MeasuredPoints of(List<Series> series, List<double[]> rows) {
        double[][] column = new double[5][rows.size()];
        int[] of = new int[rows.size()];
        for (int i = 0; i < of.length; i++) {
            for (int c = 0; c < 5; c++) {
                column[c][i] = rows.get(i)[c];
            }
            of[i] = (int) column[1][i];
        }
        return new MeasuredPoints(List.copyOf(series), column[0], of, column[2], column[3], column[4]);
    }

    public int size() {
        return of.length;
    }

    public boolean phased(int i) {
        return !Double.isNaN(phase[i]);
    }

    /** Real numbers in all: two where a phase was measured. */
    int numbers() {
        return size() + (int) IntStream.range(0, size()).filter(this::phased).count();
    }

    /** The same numbers at frequencies moved by some lines of each curve's spectrum. */
    public MeasuredPoints moved(double lines) {
        double[] f = frequency.clone();
        for (int i = 0; i < f.length; i++) {
            f[i] = Math.max(f[i] / 10, f[i] + lines * series.get(of[i]).source().lineHz());
        }
        return new MeasuredPoints(series, f, of, magnitude, phase, stated);
    }

    /** The same points with other magnitudes and phases. */
    public MeasuredPoints with(double[] magnitudes, double[] phases) {
        return new MeasuredPoints(series, frequency, of, magnitudes, phases, stated);
    }

    /** One curve alone. */
    public MeasuredPoints only(int which) {
        List<double[]> rows = new ArrayList<>();
        for (int i = 0; i < size(); i++) {
            if (of[i] == which) {
                rows.add(new double[] {frequency[i], 0, magnitude[i], phase[i], stated[i]});
            }
        }
        return of(List.of(series.get(which)), rows);
    }

    /** The same numbers at frequencies multiplied by a factor. */
    public MeasuredPoints at(double factor) {
        return new MeasuredPoints(series, Arrays.stream(frequency).map(f -> f * factor).toArray(), of, magnitude, phase, stated);
    }

    /** The same numbers taken as driven along another axis. */
    public MeasuredPoints along(Axis axis) {
        return new MeasuredPoints(series.stream().map(s -> new Series(s.source(), axis, s.phased(), s.stated())).toList(), frequency, of,
            magnitude, phase, stated);
    }

    /** At most so many points of each curve, evenly taken. */
    public MeasuredPoints thinned(int most) {
        int[] count = new int[series.size()];
        for (int s : of) {
            count[s]++;
        }
        int[] seen = new int[series.size()];
        List<double[]> rows = new ArrayList<>();
        for (int i = 0; i < size(); i++) {
            int s = of[i];
            int step = (count[s] + most - 1) / most;
            if (seen[s]++ % step == step / 2) {
                rows.add(new double[] {frequency[i], s, magnitude[i], phase[i], stated[i]});
            }
        }
        return of(series, rows);
    }
}
