package quietband.report.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * One line of a chart over frequency.
 *
 * @param name as the legend calls it; empty keeps it out of the legend
 * @param x    frequencies in Hz, rising, above 0; not copied, do not modify
 * @param y    values, as many; NaN where there is none; not copied, do not modify
 * @param look how it is drawn
 * @param dots markers only, at every point: measured values and single lines
 */
public record ChartLine(String name, double[] x, double[] y, ChartStyle look, boolean dots) {

    private static final int MOST = 600;

    /** A drawn line. */
    public ChartLine(String name, double[] x, double[] y, ChartStyle look) {
        this(name, x, y, look, false);
    }

    /** A drawn line of sensitivities in 1/g, shown in ppb/g. */
    public static ChartLine ppb(String name, double[] x, double[] perG, ChartStyle look) {
        return new ChartLine(name, x, Arrays.stream(perG).map(y -> 1e9 * y).toArray(), look);
    }

    /** A drawn line through some rows of a table. */
    public static <T> ChartLine of(String name, List<T> rows, ToDoubleFunction<? super T> x, ToDoubleFunction<? super T> y,
                                   ChartStyle look) {
        return new ChartLine(name, rows.stream().mapToDouble(x).toArray(), rows.stream().mapToDouble(y).toArray(), look);
    }

    /** The same with markers only. */
    public ChartLine dotted() {
        return new ChartLine(name, x, y, look, true);
    }

    /** The largest value that is a finite number; minus infinity when there is none. */
    public double top() {
        return Arrays.stream(y).filter(Double::isFinite).max().orElse(Double.NEGATIVE_INFINITY);
    }

    /** The least value that is a finite number, above 0 when asked; infinity when there is none. */
    public double bottom(boolean positive) {
        return Arrays.stream(y).filter(v -> Double.isFinite(v) && (!positive || v > 0)).min().orElse(Double.POSITIVE_INFINITY);
    }

    /** As many points as a chart can show: of each stretch the first, the least, the largest and the last stay. */
    public ChartLine thinned() {
        if (x.length <= MOST) {
            return this;
        }
        List<Integer> kept = new ArrayList<>();
        int stretches = MOST / 4;
        for (int s = 0; s < stretches; s++) {
            keep(kept, (int) ((long) x.length * s / stretches), (int) ((long) x.length * (s + 1) / stretches));
        }
        return new ChartLine(name, kept.stream().mapToDouble(i -> x[i]).toArray(),
            kept.stream().mapToDouble(i -> y[i]).toArray(), look, dots);
    }

    private void keep(List<Integer> kept, int from, int to) {
        int least = from;
        int largest = from;
        for (int i = from; i < to; i++) {
            least = y[i] < y[least] ? i : least;
            largest = y[i] > y[largest] ? i : largest;
        }
        int previous = -1;
        for (int i : new int[] {from, Math.min(least, largest), Math.max(least, largest), to - 1}) {
            if (i > previous) {
                kept.add(i);
                previous = i;
            }
        }
    }
}
