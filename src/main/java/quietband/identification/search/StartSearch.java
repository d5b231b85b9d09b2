package quietband.identification.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.random.SobolSequenceGenerator;
import org.hipparchus.stat.StatUtils;

/**
 * Finds where to begin when the model's own numbers may be far off: scans of whole families of numbers (all stiffnesses at once),
 * then of each number, on the logarithm of the magnitude, which is a wide valley; from the model's numbers and from
 * points spread over a box around them, until what is left is no more than the noise or two searches end at the same place.
 */
public final class StartSearch {

    private static final int POINTS = 60;
    private static final double SPAN = Math.log(6);
    private static final int STEPS = 10;
    private static final double GOOD = 2;
    private static final double QUIETEST = 0.002;

    private final ResponseEvaluator evaluator;
    private final FreeValues free;
    private final boolean[] held;
    private final double[] re;
    private final double[] im;

    public StartSearch(ResponseEvaluator whole, boolean[] held) {
        this.evaluator = new ResponseEvaluator(whole.design(whole.free().start()), whole.free(), whole.seen().thinned(POINTS));
        this.free = whole.free();
        this.held = held;
        this.re = new double[evaluator.seen().size()];
        this.im = new double[re.length];
    }

    /**
     * The best place found.
     *
     * @param most searches to try
     */
    public double[] best(int most) {
        WeightedMisfit misfit = new WeightedMisfit(evaluator, weights(), true);
        BoundedLeastSquares solver = new BoundedLeastSquares(misfit, free);
        double[] best = solver.run(free.start(), held).u();
        if (StatUtils.sumSq(misfit.at(best)) < GOOD * misfit.rows()) {
            return best;
        }
        SobolSequenceGenerator sobol = new SobolSequenceGenerator(free.size());
        sobol.skipTo(1);
        List<Double> costs = new ArrayList<>();
        double least = cost(best);
        for (int k = 0; k < most; k++) {
            double[] from = k == 0 ? free.start() : spread(sobol.nextVector());
            double[] found = solver.run(scanned(from), held).u();
            double cost = cost(found);
            if (cost < least) {
                least = cost;
                best = found;
            }
            if (StatUtils.sumSq(misfit.at(found)) < GOOD * misfit.rows()) {
                break;
            }
            costs.add(cost);
            double bound = least * 1.001 + 1e-12;
            if (costs.stream().filter(c -> c <= bound).count() >= 2) {
                break;
            }
        }
        return best;
    }

    /** One over the noise of each point: as stated, else as neighbours scatter about each other. */
    private double[] weights() {
        MeasuredPoints seen = evaluator.seen();
        double[] noise = new double[seen.series().size()];
        for (int s = 0; s < noise.length; s++) {
            int own = s;
            double[] m = IntStream.range(0, seen.size()).filter(i -> seen.of()[i] == own).mapToDouble(i ->
                Math.log(seen.magnitude()[i])).toArray();
            double[] bend = IntStream.range(1, Math.max(1, m.length - 1)).mapToDouble(i ->
                Math.abs(m[i - 1] - 2 * m[i] + m[i + 1])).sorted().toArray();
            // the median of |normal| is 0.6745, a second difference of white noise has sqrt(6) of its spread
            noise[s] = bend.length == 0 ? 0.1 : bend[bend.length / 2] / (0.6745 * Math.sqrt(6));
        }
        double[] weight = new double[seen.size()];
        for (int i = 0; i < weight.length; i++) {
            double e = seen.stated()[i];
            weight[i] = 1 / Math.max(QUIETEST, Double.isNaN(e) ? noise[seen.of()[i]] : e);
        }
        return weight;
    }

    private double[] spread(double[] unit) {
        double[] u = free.start();
        for (int i = 0; i < u.length; i++) {
            if (!held[i]) {
                double[] grid = grid(free.get(i), u[i]);
                u[i] = grid[(int) (unit[i] * grid.length)];
            }
        }
        return free.clipped(u);
    }

    private double[] scanned(double[] start) {
        double[] u = start.clone();
        double[] cost = {cost(u)};
        double before = Double.POSITIVE_INFINITY;
        for (int round = 0; round < 3 && cost[0] < 0.9 * before; round++) {
            before = cost[0];
            for (int[] family : free.families()) {
                int[] own = Arrays.stream(family).filter(i -> !held[i]).toArray();
                if (own.length > 1 && free.get(own[0]).log()) {
                    together(u, own, cost);
                }
            }
            for (int i = 0; i < u.length; i++) {
                if (!held[i]) {
                    alone(u, i, cost);
                }
            }
        }
        return u;
    }

    private void together(double[] u, int[] family, double[] cost) {
        double[] from = u.clone();
        for (int s = -STEPS; s <= STEPS; s++) {
            double[] tried = from.clone();
            for (int i : family) {
                tried[i] += SPAN * s / STEPS;
            }
            keep(u, free.clipped(tried), cost);
        }
    }

    private void alone(double[] u, int i, double[] cost) {
        for (double g : grid(free.get(i), u[i])) {
            double[] tried = u.clone();
            tried[i] = g;
            keep(u, free.clipped(tried), cost);
        }
    }

    private void keep(double[] u, double[] tried, double[] cost) {
        double c = cost(tried);
        if (c < cost[0]) {
            cost[0] = c;
            System.arraycopy(tried, 0, u, 0, u.length);
        }
    }

    /** Where a number is tried. */
    private static double[] grid(FreeValue v, double now) {
        double[] g = new double[2 * STEPS + 1];
        for (int s = -STEPS; s <= STEPS; s++) {
            double share = (double) s / STEPS;
            if (v.log()) {
                g[s + STEPS] = now + SPAN * share;
            } else if (v.floored()) {
                g[s + STEPS] = s == -STEPS ? 0 : Math.exp(Math.log(100) * share) * 2;
            } else {
                g[s + STEPS] = Math.signum(share) * reach(v) * share * share;
            }
        }
        return g;
    }

    /** How many steps a number that may be negative is searched. */
    private static double reach(FreeValue v) {
        return switch (v.detail().dimension()) {
            case LENGTH -> 20;
            case TIME -> 200;
            case RATIO -> 60;
            case ANGLE -> 100 * Math.PI;
            default -> 6;
        };
    }

    /** Mean of a distance that outliers and far-off peaks do not rule; infinite where no design can exist. */
    private double cost(double[] u) {
        MeasuredPoints seen = evaluator.seen();
        if (!evaluator.predict(u, re, im)) {
            return Double.POSITIVE_INFINITY;
        }
        double sum = 0;
        for (int i = 0; i < re.length; i++) {
            double a = Math.log(Math.max(Math.hypot(re[i], im[i]), 1e-300) / seen.magnitude()[i]);
            double p = seen.phased(i) ? Math.IEEEremainder(Math.atan2(im[i], re[i]) - seen.phase()[i], 2 * Math.PI) : 0;
            double e = Double.isNaN(seen.stated()[i]) ? 0 : seen.stated()[i] / 0.1;
            sum += Math.sqrt(a * a + p * p) / (1 + e * e);
        }
        return sum / re.length;
    }
}
