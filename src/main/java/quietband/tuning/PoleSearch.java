package quietband.tuning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import quietband.spectrum.LogGrid;

/**
 * Looks for the poles of three filters of second-order sections: from several starts, first with the same poles on every axis,
 * then each axis with its own, by Levenberg's and Marquardt's method on what is left when the best numerators are taken
 * (variable projection, Golub and Pereyra 1973; from memory). The same question gives the same answer.
 */
final class PoleSearch {

    private static final int GAIN_POINTS = 16;
    private static final int RANDOM_STARTS = 3;
    private static final int SHARED_STEPS = 14;
    private static final int OWN_STEPS = 14;
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

    /** A row of poles and what it leaves. */
    private record Found(double[] row, double cost) { }

    /**
     * For a residual weighted per frequency and axis.
     *
     * @param count    sections
     * @param f        rising, Hz
     * @param weight   of y_x, y_y, y_z per frequency
     * @param sensor   of F_x, F_y, F_z per frequency, as noise; empty for none
     */
    PoleSearch(int count, ResidualTerms terms, double[] f, double[][] weight, double[][] sensor, double sampleRateHz, double maxGain) {
        this.count = count;
        this.from = f[0];
        this.to = f[f.length - 1];
        this.rate = sampleRateHz;
        this.poles = new SectionPoles(sampleRateHz, from / 300);
        this.rows = new PoleRows(poles, count, terms, f, weight, sensor, gainPoints(), sampleRateHz);
        rows.price(GAIN_PRICE, maxGain);
    }

    private double[] gainPoints() {
        TreeSet<Double> f = new TreeSet<>();
        for (double v : LogGrid.between(GAIN_POINTS / 3, from / 1000, from / 2)) {
            f.add(v);
        }
        double low = Math.min(2 * to, rate / 4);
        for (int n = f.size(); n < GAIN_POINTS; n++) {
            f.add(low + (rate / 2 - low) * (n - GAIN_POINTS / 3) / (GAIN_POINTS - 1 - GAIN_POINTS / 3));
        }
        return f.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /**
     * Denominators {a1, a2, ..} per axis, best first: of the least sum of squares, and, when {@code peak}, of the least
     * largest weighted residual behind it.
     */
    List<double[][]> run(boolean peak) {
        List<Found> shared = new ArrayList<>();
        for (double[] start : starts()) {
            poles.clamp(start);
            shared.add(improve(start, true, SHARED_STEPS));
        }
        shared.sort(Comparator.comparingDouble(Found::cost));
        Found best = null;
        for (Found s : shared.subList(0, Math.min(2, shared.size()))) {
            double[] row = new double[6 * count];
            for (int i = 0; i < 3; i++) {
                System.arraycopy(s.row(), 0, row, 2 * count * i, 2 * count);
            }
            Found own = improve(row, false, OWN_STEPS);
            best = best == null || own.cost() < best.cost() ? own : best;
        }
        List<double[][]> found = new ArrayList<>();
        found.add(rows.denominators(best.row(), false));
        if (peak) {
            found.add(rows.denominators(levelled(best.row()), false));
        }
        return found;
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
            row = improve(row, false, LAWSON_STEPS).row();
        }
        return best;
    }

    private List<double[]> starts() {
        double slow = from / 20;
        double fast = rate / 5;
        List<double[]> starts = new ArrayList<>();
        starts.add(row(k -> SectionPoles.real(fast, fast * (1 + 0.3 * k))));
        starts.add(row(k -> SectionPoles.real(k == 0 ? slow : fast, fast * (1 + 0.2 * k))));
        starts.add(row(k -> SectionPoles.real(spread(2 * k), spread(2 * k + 1))));
        starts.add(row(k -> k == 0 ? SectionPoles.real(slow, from / 3) : SectionPoles.real(fast, fast * (1 + 0.2 * k))));
        starts.add(row(k -> k == 0 ? SectionPoles.real(slow, fast) : SectionPoles.resonance(
            from * Math.pow(to / from, k / (double) count), 0.3)));
        starts.add(row(k -> k == 0 ? SectionPoles.real(slow, 2 * to) : SectionPoles.resonance(2 * to * (1 + k), 0.7)));
        UniformRandomProvider random = RandomSource.PHILOX_4X64.create(new long[] {1, 0, 0, 0, 0, 0});
        for (int n = 0; n < RANDOM_STARTS; n++) {
            starts.add(row(k -> SectionPoles.real(anywhere(random), anywhere(random))));
        }
        return starts;
    }

    private double anywhere(UniformRandomProvider random) {
        double low = from / 50;
        return low * Math.pow(rate / 4 / low, random.nextDouble());
    }

    private double spread(int n) {
        double low = from / 30;
        return low * Math.pow(Math.min(6 * to, rate / 4) / low, n / (2.0 * count - 1));
    }

    private double[] row(java.util.function.IntFunction<double[]> pair) {
        double[] row = new double[2 * count];
        for (int k = 0; k < count; k++) {
            System.arraycopy(pair.apply(k), 0, row, 2 * k, 2);
        }
        return row;
    }

    /** Steps downhill from a row; the price of gain follows after half of them. */
    private Found improve(double[] start, boolean shared, int steps) {
        double[] row = start.clone();
        double[] rest = rows.rest(row, shared).clone();
        double cost = squares(rest);
        double damping = 1e-2;
        for (int step = 0; step < steps; step++) {
            double[][] jacobian = jacobian(row, rest, shared);
            double before = cost;
            boolean stepped = false;
            for (int attempt = 0; attempt < 6 && !stepped; attempt++) {
                double[] next = step(row, rest, jacobian, damping);
                poles.clamp(next);
                double[] left = rows.rest(next, shared);
                double now = squares(left);
                if (now < cost) {
                    row = next;
                    rest = left.clone();
                    cost = now;
                    stepped = true;
                    damping /= 5;
                } else {
                    damping *= 6;
                }
            }
            if (!stepped || before - cost < 1e-4 * before) {
                break;
            }
        }
        return new Found(row, cost);
    }

    private double[][] jacobian(double[] row, double[] rest, boolean shared) {
        double h = 1e-4;
        double[][] j = new double[row.length][];
        for (int k = 0; k < row.length; k++) {
            double kept = row[k];
            row[k] = kept + h;
            double[] moved = rows.rest(row, shared).clone();
            row[k] = kept;
            for (int i = 0; i < moved.length; i++) {
                moved[i] = (moved[i] - rest[i]) / h;
            }
            j[k] = moved;
        }
        return j;
    }

    private static double[] step(double[] row, double[] rest, double[][] j, double damping) {
        int n = row.length;
        double[] h = new double[n * n];
        double[] g = new double[n];
        for (int a = 0; a < n; a++) {
            for (int b = 0; b <= a; b++) {
                h[a * n + b] = dot(j[a], j[b]);
            }
            g[a] = -dot(j[a], rest);
        }
        double most = 0;
        for (int a = 0; a < n; a++) {
            most = Math.max(most, h[a * n + a]);
        }
        for (int a = 0; a < n; a++) {
            h[a * n + a] += damping * h[a * n + a] + 1e-9 * most + Double.MIN_NORMAL;
        }
        Cholesky.factor(h, n);
        Cholesky.solve(h, n, g);
        double[] next = row.clone();
        for (int a = 0; a < n; a++) {
            next[a] += Math.max(-2, Math.min(2, g[a]));
        }
        return next;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    private static double squares(double[] v) {
        return dot(v, v);
    }
}
