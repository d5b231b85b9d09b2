package quietband.spectrum;

import java.util.TreeSet;

/**
 * Builds a frequency grid that no narrow peak slips through: a logarithmic base, a fan of points around every expected
 * peak (eight in each half-power width, thinning out until the base is dense enough), every kink of the curves that will be
 * compared on it, and where a delay makes the response wind, steps fine enough to follow it.
 */
public final class SeededGrid {

    private static final int POINTS_IN_WIDTH = 8;
    private static final double SMALLEST_WIDTH = 1e-8;
    private static final int MOST_LINEAR = 40_000;

    private final double from;
    private final double to;
    private final double baseStep;
    private final TreeSet<Double> points = new TreeSet<>();

    /**
     * Starts with the base.
     *
     * @param from      lower end in Hz, above 0
     * @param to        upper end in Hz, above {@code from}
     * @param perDecade base points per decade
     */
    public SeededGrid(double from, double to, int perDecade) {
        this.from = from;
        this.to = to;
        int n = Math.max(2, 1 + (int) Math.ceil(perDecade * StrictMath.log10(to / from)));
        for (double f : LogGrid.between(n, from, to)) {
            points.add(f);
        }
        baseStep = StrictMath.log(to / from) / (n - 1);
    }

    /**
     * Starts with a base of one's own.
     *
     * @param base rising frequencies in Hz, above 0, two or more
     */
    public SeededGrid(double[] base) {
        this.from = base[0];
        this.to = base[base.length - 1];
        double widest = 0;
        for (int i = 0; i < base.length; i++) {
            points.add(base[i]);
            widest = i == 0 ? 0 : Math.max(widest, StrictMath.log(base[i] / base[i - 1]));
        }
        baseStep = widest;
    }

    /** A point that must be on the grid, e.g. a kink of a limit line; ignored outside the ends. */
    public void add(double f) {
        if (f >= from && f <= to) {
            points.add(f);
        }
    }

    /** Several such points. */
    public void addAll(double... frequencies) {
        for (double f : frequencies) {
            add(f);
        }
    }

    /**
     * A peak to be expected.
     *
     * @param centre    its frequency in Hz, above 0
     * @param halfPower its full width at half power in Hz; raised to 1e-8 of the centre when smaller
     */
    public void peak(double centre, double halfPower) {
        if (!(centre > 0) || !Double.isFinite(centre)) {
            return;
        }
        double step = Math.max(halfPower, SMALLEST_WIDTH * centre) / POINTS_IN_WIDTH;
        add(centre);
        double away = 0;
        for (int i = 0; i < 400; i++) {
            away += step;
            if (i >= 3 * POINTS_IN_WIDTH) {
                step *= 1.3;
            }
            if (step > baseStep * centre || (centre - away < from && centre + away > to)) {
                break;
            }
            add(centre - away);
            add(centre + away);
        }
    }

    /** Steps of at most this many Hz over the whole range (at most 40,000 of them); the step taken, or 0 where none was needed. */
    public double everyHz(double step) {
        if (step > 0 && Double.isFinite(step) && step < baseStep * to) {
            int n = (int) Math.min(MOST_LINEAR, Math.ceil((to - from) / step));
            for (int i = 1; i < n; i++) {
                add(from + (to - from) * i / n);
            }
            return (to - from) / n;
        }
        return 0;
    }

    /** The grid, rising. */
    public double[] build() {
        return points.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
