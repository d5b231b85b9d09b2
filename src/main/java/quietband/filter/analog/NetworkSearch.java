package quietband.filter.analog;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleValueChecker;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;
import quietband.filter.AnalogNetwork;
import quietband.filter.FilterException;
import quietband.filter.FilterTask;
import quietband.filter.design.FilterChecks;
import quietband.model.Vec;
import quietband.numerics.BrentMaximum;

/**
 * Finds three lead-lag networks from values that are made: first with parts of any value, one axis after the other while the other
 * two stand; then, axis by axis, the best of all combinations near that; then steps of one or two parts as long as any helps.
 */
public final class NetworkSearch {

    private static final int ROUNDS = 2;
    private static final int EVALUATIONS = 900;
    private static final double EVEN = 1e5;
    private static final double[] LEADS = {1e-5, 6e-5, 1e-3};
    private static final double[] LAGS = {5, 0.05, 1e-3};
    private static final int FAR = 2;
    private static final double WEIGHT_RANGE = 0.2;

    private final FilterTask task;
    private final AnalogGoal aim;
    private final double[] ohms;
    private final double[] farads = PreferredValues.capacitors();

    private NetworkSearch(FilterTask task, PreferredValues series) {
        this.task = task;
        this.aim = new AnalogGoal(task);
        this.ohms = series.resistors();
    }

    /**
     * The networks for a task whose count is the number of poles, 1 or 2.
     *
     * @throws FilterException when the design or the task does not allow it
     */
    public static FoundNetworks find(FilterTask task, PreferredValues series) {
        check(task);
        return new NetworkSearch(task, series).run();
    }

    private static void check(FilterTask task) {
        if (task.design().cancellation().isEmpty()) {
            throw new FilterException("the model has no cancellation to design a network for; add a cancellation block with "
                + "sensor and path");
        }
        if (task.count() < 1 || task.count() > 2) {
            throw new FilterException("--analog " + task.count() + ": one pole or two");
        }
        if (task.measured().isPresent()) {
            throw new FilterException("--analog works on the model's path; fit the measured response into the model first (fit --measured "
                + "path), then leave --response out");
        }
        if (!(task.maxGain() > 0) || !Double.isFinite(task.maxGain())) {
            throw new FilterException("the largest gain must be above 0; write e.g. --max-gain \"20 dB\"");
        }
        FilterChecks.goal(task);
    }

    private FoundNetworks run() {
        double flat = Math.min(1, 0.99 * task.maxGain());
        List<AnalogNetwork> free = new ArrayList<>(Collections.nCopies(3, new AnalogNetwork(EVEN, flat * EVEN, 0, 0, 0, 0)));
        for (int round = 0; round < ROUNDS; round++) {
            for (int i = 0; i < 3; i++) {
                aim.hold(i, free);
                free.set(i, loose(free.get(i)));
            }
        }
        double ideal = aim.goal(free.get(2));
        List<AnalogNetwork> made = new ArrayList<>(free);
        for (int round = 0; round < ROUNDS; round++) {
            for (int i = 0; i < 3; i++) {
                aim.hold(i, made);
                AnalogNetwork near = made(loose(free.get(i)));
                AnalogNetwork best = round == 0 ? near : better(made.get(i), near);
                made.set(i, polished(best));
            }
        }
        double value = aim.goal(made.get(2));
        double[] factor = {1, 1, 1};
        List<AnalogNetwork> scaled = new ArrayList<>(made);
        for (int round = 0; round < ROUNDS; round++) {
            for (int i = 0; i < 3; i++) {
                aim.hold(i, scaled);
                factor[i] = factor(made.get(i));
                scaled.set(i, made.get(i).times(factor[i]));
            }
        }
        return new FoundNetworks(task, made, ideal, value, Vec.of(factor), aim.goal(scaled.get(2)));
    }

    /** By how much a weight should change so that its network leaves least. */
    private double factor(AnalogNetwork n) {
        return Math.exp(BrentMaximum.between(x -> -aim.value(n.times(Math.exp(x)), Double.POSITIVE_INFINITY), -WEIGHT_RANGE, WEIGHT_RANGE,
            1e-7).x());
    }

    private AnalogNetwork better(AnalogNetwork a, AnalogNetwork b) {
        return score(b, Double.POSITIVE_INFINITY) < score(a, Double.POSITIVE_INFINITY) ? b : a;
    }

    /** The goal, infinite where the gain is above what is allowed. */
    private double score(AnalogNetwork n, double best) {
        double v = aim.value(n, best);
        return v < best && n.peak() > task.maxGain() * (1 + 1e-9) ? Double.POSITIVE_INFINITY : v;
    }

    /** Parts of any value. */
    private AnalogNetwork loose(AnalogNetwork start) {
        AnalogNetwork best = start;
        double least = score(start, Double.POSITIVE_INFINITY);
        for (double[] x : starts()) {
            AnalogNetwork n = simplex(x);
            double v = score(n, Double.POSITIVE_INFINITY);
            if (v < least) {
                least = v;
                best = n;
            }
        }
        return best;
    }

    /** ln gain, then for a lead and a lag each ln of its longer time and ln of how far apart its corners are. */
    private List<double[]> starts() {
        List<double[]> starts = new ArrayList<>();
        for (double lead : LEADS) {
            double[] own = {0, Math.log(lead), Math.log(5), Double.NaN, Double.NaN};
            if (task.count() == 1) {
                starts.add(own);
            }
            for (double lag : LAGS) {
                if (task.count() == 2) {
                    starts.add(new double[] {0, own[1], own[2], Math.log(lag), Math.log(0.05)});
                }
            }
        }
        for (double lag : LAGS) {
            if (task.count() == 1) {
                starts.add(new double[] {0, Double.NaN, Double.NaN, Math.log(lag), Math.log(0.05)});
            }
        }
        return starts;
    }

    private AnalogNetwork simplex(double[] start) {
        int[] used = java.util.stream.IntStream.range(0, 5).filter(k -> !Double.isNaN(start[k])).toArray();
        double[] x = java.util.Arrays.stream(used).mapToDouble(k -> start[k]).toArray();
        double large = 1e3;
        var found = new SimplexOptimizer(new SimpleValueChecker(1e-7, -1, EVALUATIONS)).optimize(new MaxEval(Integer.MAX_VALUE),
            GoalType.MINIMIZE, new InitialGuess(x), new NelderMeadSimplex(x.length, 0.3),
            new ObjectiveFunction(p -> {
                double v = score(network(start, used, p), Double.POSITIVE_INFINITY);
                return Double.isFinite(v) ? v : large;
            }));
        return network(start, used, found.getPoint());
    }

    private static AnalogNetwork network(double[] start, int[] used, double[] p) {
        double[] x = start.clone();
        for (int k = 0; k < used.length; k++) {
            x[used[k]] = p[k];
        }
        double r2 = EVEN * Math.exp(clip(x[0], 0.01, 100));
        double[] lead = branch(EVEN, x[1], x[2]);
        double[] lag = branch(r2, x[3], x[4]);
        return new AnalogNetwork(EVEN, r2, lead[0], lead[1], lag[0], lag[1]);
    }

    /** Resistor and capacitor beside a resistor r: slow = (r + r3) c and slow/(1 + apart) = r3 c; both 0 where no branch is wanted. */
    private static double[] branch(double r, double logSlow, double logApart) {
        if (Double.isNaN(logSlow)) {
            return new double[2];
        }
        double r3 = r / Math.exp(clip(logApart, 1e-3, 300));
        return new double[] {r3, Math.exp(clip(logSlow, 1e-7, 10)) / (r + r3)};
    }

    private static double clip(double log, double least, double most) {
        return Math.max(Math.log(least), Math.min(Math.log(most), log));
    }

    /** The best combination of values that are made near a network of any values. */
    private AnalogNetwork made(AnalogNetwork wanted) {
        Best best = new Best();
        double lead = (wanted.r1() + wanted.r3()) * wanted.c1();
        double leadEnd = wanted.r3() * wanted.c1();
        double[] first = wanted.leads() ? farads : new double[] {0};
        for (double c1 : first) {
            double[] thirds = wanted.leads() ? PreferredValues.near(ohms, leadEnd / c1, 2) : new double[] {0};
            for (double r3 : thirds) {
                double[] ones = wanted.leads() ? PreferredValues.near(ohms, lead / c1 - r3, 3) : ohms;
                for (double r1 : ones) {
                    for (double r2 : PreferredValues.near(ohms, r1 * wanted.gain(), 3)) {
                        feedback(best, wanted, r1, r2, r3, c1);
                    }
                }
            }
        }
        return best.network;
    }

    private void feedback(Best best, AnalogNetwork wanted, double r1, double r2, double r3, double c1) {
        if (!wanted.lags()) {
            best.look(new AnalogNetwork(r1, r2, r3, c1, 0, 0));
            return;
        }
        // (r2 + r4) c2 less r4 c2 is r2 c2
        double apart = wanted.r2() * wanted.c2();
        double end = wanted.r4() * wanted.c2();
        for (double c2 : PreferredValues.near(farads, apart / r2, 2)) {
            for (double r4 : PreferredValues.near(ohms, end / c2, 2)) {
                best.look(new AnalogNetwork(r1, r2, r3, c1, r4, c2));
            }
        }
    }

    /** Steps of one part or of two as long as any helps. */
    private AnalogNetwork polished(AnalogNetwork start) {
        Best best = new Best();
        best.look(start);
        double before = Double.POSITIVE_INFINITY;
        while (best.least < before) {
            before = best.least;
            double[] from = best.network.parts();
            for (int a = 0; a < from.length; a++) {
                for (int b = a; b < from.length; b++) {
                    for (int da = -FAR; da <= FAR; da++) {
                        for (int db = -FAR; db <= FAR; db++) {
                            double[] to = from.clone();
                            to[a] = moved(from[a], a, da);
                            to[b] = a == b ? to[b] : moved(from[b], b, db);
                            best.look(AnalogNetwork.of(to));
                        }
                    }
                }
            }
        }
        return best.network;
    }

    /** What is not there stays away. */
    private double moved(double value, int part, int steps) {
        boolean farad = part == 3 || part == 5;
        return value == 0 ? 0 : PreferredValues.step(farad ? farads : ohms, value, steps);
    }

    /** The best network seen. */
    private final class Best {

        private AnalogNetwork network;
        private double least = Double.POSITIVE_INFINITY;

        void look(AnalogNetwork n) {
            double v = score(n, least);
            if (v < least || network == null) {
                least = v;
                network = n;
            }
        }
    }
}
