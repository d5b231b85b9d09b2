package quietband.filter.sections;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import quietband.filter.FilterTask;
import quietband.filter.ResidualTerms;
import quietband.numerics.DampedLeastSquares;
import quietband.numerics.DampedLeastSquares.End;
import quietband.spectrum.LogGrid;

/**
 * Looks for the poles of three filters of second-order sections: one section after the other, each from several starts, by
 * Levenberg's and Marquardt's method on what is left when the best numerators are taken (variable projection, Golub and Pereyra
 * 1973; from memory). More sections are never worse, and the same question gives the same answer.
 */
final class PoleSearch implements DampedLeastSquares.Rows {

    private static final int GAIN_POINTS_BELOW = 5;
    private static final double GAIN_STEP = 0.15;
    private static final int FIRST_STEPS = 14;
    private static final int FEW_STEPS = 4;
    private static final int OWN_STEPS = 12;
    private static final int LAWSON_ROUNDS = 8;
    private static final int LAWSON_STEPS = 4;
    // what the largest gain allowed costs, as a share of what there is to cancel
    private static final double GAIN_PRICE = 1e-3;

    private final PoleRows rows;
    private final SectionPoles poles;
    private final int count;
    private final double from;
    private final double to;
    private final double rate;

    /**
     * For a residual weighted per frequency and axis.
     *
     * @param task     says how many sections and the largest gain
     * @param f        rising, Hz
     * @param weight   of y_x, y_y, y_z per frequency
     * @param sensor   of F_x, F_y, F_z per frequency, as noise; empty for none
     */
    PoleSearch(FilterTask task, ResidualTerms terms, double[] f, double[][] weight, double[][] sensor, double sampleRateHz) {
        this.count = task.count();
        this.from = f[0];
        this.to = f[f.length - 1];
        this.rate = sampleRateHz;
        this.poles = new SectionPoles(sampleRateHz, from / 300);
        this.rows = new PoleRows(poles, terms, f, weight, sensor, gainPoints());
        rows.price(GAIN_PRICE, task.maxGain());
    }

    private double[] gainPoints() {
        TreeSet<Double> f = new TreeSet<>();
        for (double v : LogGrid.between(GAIN_POINTS_BELOW, from / 1000, from / 2)) {
            f.add(v);
        }
        // so close that no resonance fits between two of them
        double low = Math.min(1.15 * to, 0.4 * rate);
        for (double v : LogGrid.between(Math.max(2, (int) Math.ceil(Math.log(rate / 2 / low) / GAIN_STEP) + 1), low, rate / 2)) {
            f.add(v);
        }
        return f.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /**
     * Denominators {a1, a2, ..} per axis, best first: of the least sum of squares, and, when {@code peak}, of the least
     * largest weighted residual behind it.
     */
    List<double[][]> run(boolean peak) {
        double[] row = new double[0];
        for (int n = 1; n <= count; n++) {
            row = grown(row, n);
        }
        List<double[][]> found = new ArrayList<>();
        found.add(rows.denominators(row));
        if (peak) {
            found.add(rows.denominators(levelled(row)));
        }
        return found;
    }

    /** One section more on every axis than a row has. */
    private double[] grown(double[] row, int n) {
        rows.sections(n);
        List<End> tried = new ArrayList<>();
        for (double[] pair : starts(n)) {
            double[] start = new double[6 * n];
            int before = 2 * (n - 1);
            for (int i = 0; i < 3; i++) {
                System.arraycopy(row, before * i, start, 2 * n * i, before);
                System.arraycopy(pair, 0, start, 2 * n * i + before, 2);
            }
            poles.clamp(start);
            tried.add(improve(start, n == 1 ? FIRST_STEPS : FEW_STEPS));
        }
        tried.sort(Comparator.comparingDouble(End::cost));
        double[] best = tried.get(0).x();
        for (int pass = 0; pass < 2; pass++) {
            rows.reprice(best);
            best = improve(best, OWN_STEPS).x();
        }
        return best;
    }

    /** Lawson's weights: what stands out counts more, until nothing does. */
    private double[] levelled(double[] start) {
        double[] row = start;
        double[] best = start;
        double least = Double.POSITIVE_INFINITY;
        for (int round = 0; round < LAWSON_ROUNDS; round++) {
            double most = rows.level(row);
            if (most < least) {
                least = most;
                best = row;
            }
            row = improve(row, LAWSON_STEPS).x();
        }
        return best;
    }

    /** Pairs of poles that a section more may begin with: fast ones, a slow one, one within the band, resonances. */
    private List<double[]> starts(int n) {
        double fast = rate / 5;
        double middle = Math.sqrt(from * to);
        List<double[]> starts = new ArrayList<>(List.of(SectionPoles.real(from / 20, fast),
            SectionPoles.real(fast, fast * (1 + 0.2 * n)), SectionPoles.real(to, 4 * to)));
        if (n < 5) {
            starts.add(SectionPoles.real(from / 30, from / 2));
            starts.add(SectionPoles.resonance(middle, 0.3));
            starts.add(SectionPoles.resonance(2 * to, 0.5));
        }
        return starts;
    }

    /** Steps downhill from a row. */
    private End improve(double[] start, int steps) {
        return new DampedLeastSquares(steps, 6, 1e-2, 2, 1e-9, 1e-4).run(this, poles::clamp, start);
    }

    @Override
    public double[] at(double[] row) {
        return rows.rest(row).clone();
    }

    @Override
    public double[][] slopes(double[] row, double[] rest) {
        double h = 1e-4;
        double[][] j = new double[row.length][];
        for (int k = 0; k < row.length; k++) {
            double kept = row[k];
            row[k] = kept + h;
            double[] moved = at(row);
            row[k] = kept;
            for (int i = 0; i < moved.length; i++) {
                moved[i] = (moved[i] - rest[i]) / h;
            }
            j[k] = moved;
        }
        return j;
    }
}
