package quietband.spectrum;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.AllowedSolution;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import quietband.numerics.BrentMaximum;

/**
 * Several curves sampled together on a grid that refines itself until it follows them, with their maxima refined.
 * Values are on a logarithmic scale (dB), so that a straight line between nodes is what a log-log chart shows.
 */
public final class AdaptiveCurves {

    /** Several values at one frequency in Hz; always the same number of them. */
    @FunctionalInterface
    public interface Curves {
        /** The values, a fresh array. */
        double[] at(double f);
    }

    /** A refined extremum: where and how much. */
    public record Extremum(double frequencyHz, double value) { }

    private static final int DEEPEST = 9;
    // nodes beside those of the grid: as many as a band can show, and then no more
    private static final int MOST_ADDED = 150_000;
    private static final int MOST_PEAKS = 40;
    // of the logarithm of a maximum's frequency
    private static final double NEAR = 1e-9;

    private final Curves curves;
    private final double[] frequency;
    private final double[][] value;
    private final boolean fine;
    private double followedToHz = Double.POSITIVE_INFINITY;

    private AdaptiveCurves(Curves curves, double[] frequency, double[][] value, boolean fine) {
        this.curves = curves;
        this.frequency = frequency;
        this.value = value;
        this.fine = fine;
    }

    /**
     * Curves as they were sampled, whose maxima are refined to a five-hundredth of the distance of the nodes only.
     *
     * @param frequency rising, Hz
     * @param value     of the curves at each
     */
    public static AdaptiveCurves sampled(List<Double> frequency, List<double[]> value, Curves curves) {
        return new AdaptiveCurves(curves, frequency.stream().mapToDouble(Double::doubleValue).toArray(), value.toArray(double[][]::new),
            false);
    }

    /**
     * Samples the curves on a grid and halves every interval whose middle is off the straight line by more than a tolerance.
     *
     * @param grid      rising frequencies in Hz
     * @param tolerance in the curves' unit (dB)
     */
    public static AdaptiveCurves refined(double[] grid, Curves curves, double tolerance) {
        List<Double> f = new ArrayList<>();
        List<double[]> v = new ArrayList<>();
        double[] last = curves.at(grid[0]);
        double followed = Double.POSITIVE_INFINITY;
        f.add(grid[0]);
        v.add(last);
        for (int i = 1; i < grid.length; i++) {
            double[] next = curves.at(grid[i]);
            if (f.size() - i < MOST_ADDED) {
                split(grid[i - 1], last, grid[i], next, curves, tolerance, DEEPEST, f, v);
            } else {
                followed = Math.min(followed, grid[i - 1]);
            }
            f.add(grid[i]);
            v.add(next);
            last = next;
        }
        AdaptiveCurves all = new AdaptiveCurves(curves, f.stream().mapToDouble(Double::doubleValue).toArray(),
            v.toArray(double[][]::new), true);
        all.followedToHz = followed;
        return all;
    }

    /**
     * Up to where the curves are followed to the tolerance, Hz, and from where on only at the grid's own points; infinite for everywhere.
     */
    public double followedToHz() {
        return followedToHz;
    }

    private static void split(double f1, double[] v1, double f2, double[] v2, Curves curves, double tolerance,
                              int depth, List<Double> f, List<double[]> v) {
        double middle = Math.sqrt(f1 * f2);
        if (depth == 0 || !(middle > f1 && middle < f2)) {
            return;
        }
        double[] vm = curves.at(middle);
        boolean straight = true;
        for (int k = 0; k < vm.length; k++) {
            straight &= Math.abs(vm[k] - (v1[k] + v2[k]) / 2) <= tolerance;
        }
        if (straight) {
            return;
        }
        split(f1, v1, middle, vm, curves, tolerance, depth - 1, f, v);
        f.add(middle);
        v.add(vm);
        split(middle, vm, f2, v2, curves, tolerance, depth - 1, f, v);
    }

    /** The nodes in Hz; not copied, do not modify. */
    public double[] frequencies() {
        return frequency;
    }

    /** Which of several curves goes highest, and where. */
    public record Highest(int curve, Extremum top) { }

    /** The highest of some curves from one on; the first of equal ones. */
    public Highest highest(int first, int count) {
        Highest best = null;
        double most = Double.NEGATIVE_INFINITY;
        double[] each = new double[count];
        for (int k = 0; k < count; k++) {
            each[k] = Double.NEGATIVE_INFINITY;
            for (double[] v : value) {
                each[k] = Math.max(each[k], v[first + k]);
            }
            most = Math.max(most, each[k]);
        }
        for (int k = 0; k < count; k++) {
            // what lies further below is not made up between two nodes
            Extremum top = best == null || each[k] > most - 1 ? maximum(first + k) : best.top();
            best = best == null || top.value() > best.top().value() ? new Highest(k, top) : best;
        }
        return best;
    }

    /** The largest value of a curve, refined between the nodes around every local maximum that could be it. */
    public Extremum maximum(int k) {
        double best = Double.NEGATIVE_INFINITY;
        double at = frequency[0];
        for (int i = 0; i < frequency.length; i++) {
            if (value[i][k] > best) {
                best = value[i][k];
                at = frequency[i];
            }
        }
        Extremum top = new Extremum(at, best);
        List<Integer> near = new ArrayList<>();
        for (int i = 0; i < frequency.length; i++) {
            boolean local = (i == 0 || value[i][k] >= value[i - 1][k])
                && (i == frequency.length - 1 || value[i][k] >= value[i + 1][k]);
            if (local && value[i][k] > best - 1) {
                near.add(i);
            }
        }
        if (near.size() > MOST_PEAKS) {
            near.sort(Comparator.comparingDouble(i -> -value[i][k]));
            near = near.subList(0, MOST_PEAKS);
        }
        for (int i : near) {
            Extremum e = peak(i, f -> curves.at(f)[k]);
            top = e.value() > top.value() ? e : top;
        }
        return top;
    }

    /**
     * The extremum of a function around node i, in log f between the neighbouring nodes; the node itself
     * when the function has nothing larger.
     */
    private Extremum peak(int i, DoubleUnaryOperator function) {
        double lo = StrictMath.log(frequency[Math.max(0, i - 1)]);
        double hi = StrictMath.log(frequency[Math.min(frequency.length - 1, i + 1)]);
        double node = function.applyAsDouble(frequency[i]);
        BrentMaximum.Found top = BrentMaximum.between(x -> function.applyAsDouble(StrictMath.exp(x)), lo, hi,
            fine ? Math.min(NEAR, 1e-6 * (hi - lo)) : 2e-3 * (hi - lo));
        return node >= top.value() ? new Extremum(frequency[i], node) : new Extremum(StrictMath.exp(top.x()), top.value());
    }

    /**
     * Where a scalar drawn from the curves is at most zero, as rising pairs of edges in Hz; edges are refined to about
     * 1e-13 of their frequency, and extrema between the nodes are looked at, so that neither a narrow peak above zero nor
     * a narrow dip below is missed.
     *
     * @param scalar from the values at a frequency (and the frequency) to the number compared with zero
     */
    public List<double[]> within(Scalar scalar) {
        DoubleUnaryOperator g = f -> scalar.of(f, curves.at(f));
        List<Extremum> nodes = nodesWithExtrema(scalar, g);
        List<double[]> inside = new ArrayList<>();
        double start = nodes.get(0).value() <= 0 ? nodes.get(0).frequencyHz() : Double.NaN;
        for (int i = 1; i < nodes.size(); i++) {
            Extremum a = nodes.get(i - 1);
            Extremum b = nodes.get(i);
            if (a.value() <= 0 && b.value() > 0) {
                inside.add(new double[] {start, crossing(g, a.frequencyHz(), b.frequencyHz())});
                start = Double.NaN;
            } else if (a.value() > 0 && b.value() <= 0) {
                start = crossing(g, b.frequencyHz(), a.frequencyHz());
            }
        }
        if (!Double.isNaN(start)) {
            inside.add(new double[] {start, frequency[frequency.length - 1]});
        }
        return inside;
    }

    /** A number drawn from all curves at a frequency. */
    @FunctionalInterface
    public interface Scalar {
        /** The number. */
        double of(double f, double[] values);
    }

    private List<Extremum> nodesWithExtrema(Scalar scalar, DoubleUnaryOperator g) {
        int n = frequency.length;
        double[] s = new double[n];
        for (int i = 0; i < n; i++) {
            s[i] = scalar.of(frequency[i], value[i]);
        }
        List<Extremum> nodes = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            Extremum node = new Extremum(frequency[i], s[i]);
            Extremum extra = i > 0 && i < n - 1 ? hidden(s, i, g) : null;
            if (extra != null && extra.frequencyHz() < node.frequencyHz()) {
                nodes.add(extra);
            }
            nodes.add(node);
            if (extra != null && extra.frequencyHz() > node.frequencyHz()) {
                nodes.add(extra);
            }
        }
        return nodes;
    }

    /** An extremum on the other side of zero than the three nodes around i, when it could be there. */
    private Extremum hidden(double[] s, int i, DoubleUnaryOperator g) {
        boolean top = s[i] >= s[i - 1] && s[i] >= s[i + 1] && s[i] <= 0 && s[i] > -1;
        boolean bottom = s[i] <= s[i - 1] && s[i] <= s[i + 1] && s[i] > 0 && s[i] < 1;
        if (!top && !bottom) {
            return null;
        }
        Extremum e = peak(i, top ? g : f -> -g.applyAsDouble(f));
        double v = top ? e.value() : -e.value();
        return v > 0 == top ? new Extremum(e.frequencyHz(), v) : null;
    }

    /** The crossing between a frequency inside and one outside, on a logarithmic axis, to the last bits; the inner side. */
    private static double crossing(DoubleUnaryOperator g, double inside, double outside) {
        double whole = StrictMath.log(outside / inside);
        double x = new BracketingNthOrderBrentSolver(0, 1e-14, 0, 3).solve(200,
            share -> g.applyAsDouble(share == 1 ? outside : inside * StrictMath.exp(share * whole)), 0, 1, AllowedSolution.BELOW_SIDE);
        return inside * StrictMath.exp(x * whole);
    }
}
