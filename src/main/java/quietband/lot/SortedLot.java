package quietband.lot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import quietband.work.Workers;

/**
 * A lot sorted by a rule.
 *
 * @param lot       as measured
 * @param rule      as asked
 * @param value     what each unit is judged by, ppb/g; shared, do not modify
 * @param classOf   class of each, from 0; shared, do not modify
 * @param within    chance that each really is within the limit; shared, do not modify; empty without uncertainties
 * @param accepted  which are accepted; shared, do not modify
 * @param refused   bad rows that count as built and refused
 * @param fitted       distribution fitted to the usable units; empty for a handful of them
 * @param rising    the values in rising order, ppb/g; shared, do not modify
 * @param acceptedUnits how many are accepted
 */
public record SortedLot(MeasuredLot lot, SortRule rule, double[] value, byte[] classOf, Optional<double[]> within,
                        boolean[] accepted, int refused, Optional<ComponentDistribution> fitted, double[] rising,
                        int acceptedUnits) {

    /** A unit whose reading is so many standard uncertainties away from the limit is on that side of it. */
    private static final double FAR = 30;

    /**
     * One class, or all up to an edge.
     *
     * @param edgePpbPerG upper edge; infinite for the last
     * @param inClass     units in the class alone
     * @param share       of all units up to the edge
     * @param fittedShare    the same by the fitted distribution; NaN without one
     * @param fittedError    standard error of it from the fit
     */
    public record Edge(double edgePpbPerG, long inClass, Proportion share, double fittedShare, double fittedError) {

        /** Units built for each good one, by what was seen; infinite when none was. */
        public double builtPerGood() {
            return 1 / share.estimate();
        }
    }

    /** Risks of a lot, as shares of all its units: accepted but bad, refused but good. */
    public record Risks(double acceptedBad, double refusedGood) { }

    /**
     * Sorts.
     *
     * @param refusedRows how many bad rows count as built and refused
     */
    public static SortedLot of(MeasuredLot lot, SortRule rule, int refusedRows, int threads) {
        int n = lot.size();
        double[] value = new double[n];
        byte[] classOf = new byte[n];
        for (int i = 0; i < n; i++) {
            value[i] = lot.value(i, rule.by());
            classOf[i] = (byte) rule.classOf(value[i]);
        }
        Optional<ComponentDistribution> fitted = n >= ComponentDistribution.FEWEST ? Optional.of(ComponentDistribution.of(lot))
            : Optional.empty();
        Optional<double[]> within = lot.sigmaPpbPerG().map(s -> chances(lot, rule, value, fitted, threads));
        boolean[] accepted = new boolean[n];
        int acceptedUnits = 0;
        for (int i = 0; i < n; i++) {
            accepted[i] = SortRule.within(value[i], rule.acceptedUpTo())
                && (within.isEmpty() || 1 - within.get()[i] <= rule.risk());
            acceptedUnits += accepted[i] ? 1 : 0;
        }
        double[] rising = value.clone();
        Arrays.sort(rising);
        return new SortedLot(lot, rule, value, classOf, within, accepted, refusedRows, fitted, rising, acceptedUnits);
    }

    /** Chance of each unit to be within the limit, its reading, uncertainty and the lot's distribution known. */
    private static double[] chances(MeasuredLot lot, SortRule rule, double[] value, Optional<ComponentDistribution> fitted,
                                    int threads) {
        double[][] v = lot.valuePpbPerG();
        double[][] s = lot.sigmaPpbPerG().orElseThrow();
        Optional<ComponentDistribution> prior = fitted.filter(l -> l.n() >= 3 * ComponentDistribution.FEWEST);
        return Workers.all(lot.size(), threads, () -> {
            UnitTruth truth = new UnitTruth(prior, rule.by());
            double[] sigma = new double[3];
            double[] reading = new double[3];
            return i -> {
                for (int k = 0; k < 3; k++) {
                    sigma[k] = s[k][i];
                    reading[k] = v[k][i];
                }
                double most = Math.max(sigma[0], Math.max(sigma[1], sigma[2]));
                if (most == 0 || Math.abs(value[i] - rule.limitPpbPerG()) > FAR * most) {
                    return SortRule.within(value[i], rule.limitPpbPerG()) ? 1 : 0;
                }
                return truth.within(reading, sigma, rule.limitPpbPerG());
            };
        });
    }

    /** Units that count: the usable ones, and bad rows counted as refused. */
    public int count() {
        return value.length + refused;
    }

    /** How many are accepted. */
    public int acceptedCount() {
        return acceptedUnits;
    }

    /** Share of accepted units. */
    public Proportion yield() {
        return new Proportion(acceptedCount(), count(), rule.confidence());
    }

    /** Every class, the one beyond the last edge included. */
    public List<Edge> edges() {
        long[] in = new long[rule.edgesPpbPerG().length + 1];
        for (byte k : classOf) {
            in[k]++;
        }
        List<Edge> edges = new ArrayList<>();
        long upTo = 0;
        for (int k = 0; k < in.length; k++) {
            upTo += in[k];
            boolean last = k == in.length - 1;
            double edge = last ? Double.POSITIVE_INFINITY : rule.edgesPpbPerG()[k];
            edges.add(new Edge(edge, in[k], new Proportion(upTo, count(), rule.confidence()), last ? 1 : fittedShare(edge),
                last ? 0 : fittedError(edge)));
        }
        return edges;
    }

    /** Share within a limit in ppb/g by the fitted distribution; NaN without one. */
    public double fittedShare(double limit) {
        return fitted.map(l -> l.within(rule.by()).applyAsDouble(limit)).orElse(Double.NaN);
    }

    /** Standard error of {@link #fittedShare} from the fit. */
    public double fittedError(double limit) {
        return fitted.map(l -> l.standardError(limit, rule.by())).orElse(Double.NaN);
    }

    /** Risks as sorted; empty without uncertainties. */
    public Optional<Risks> risks() {
        return within.map(w -> {
            double bad = 0;
            double good = 0;
            for (int i = 0; i < w.length; i++) {
                bad += accepted[i] ? 1 - w[i] : 0;
                good += accepted[i] ? 0 : w[i];
            }
            return new Risks(bad / count(), good / count());
        });
    }

    /** Risks with another guard band in ppb/g and no other rule. @throws java.util.NoSuchElementException without uncertainties */
    public Risks risksWithGuard(double guard) {
        double[] w = within.orElseThrow();
        double bad = 0;
        double good = 0;
        for (int i = 0; i < w.length; i++) {
            boolean in = SortRule.within(value[i], rule.limitPpbPerG() - guard);
            bad += in ? 1 - w[i] : 0;
            good += in ? 0 : w[i];
        }
        return new Risks(bad / count(), good / count());
    }

    /** Units within a limit in ppb/g. */
    public Proportion shareWithin(double limit) {
        int low = 0;
        int high = rising.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (SortRule.within(rising[middle], limit)) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return new Proportion(low, count(), rule.confidence());
    }

    /**
     * Largest distance between the share seen and the fitted distribution's over all lengths (Kolmogorov), looked at on at most a
     * thousand units;
     * NaN without one. Beyond 1.36/sqrt(n) a distribution not fitted to the same lot would be rejected at 5 %.
     */
    public double fittedDistance() {
        if (fitted.isEmpty()) {
            return Double.NaN;
        }
        DoubleUnaryOperator within = readings().within(rule.by());
        double[] v = rising;
        double most = 0;
        int steps = Math.min(v.length, 1000);
        for (int k = 0; k < steps; k++) {
            int i = (int) ((long) k * v.length / steps);
            double f = within.applyAsDouble(v[i]);
            most = Math.max(most, Math.max(Math.abs(f - (double) i / v.length), Math.abs(f - (i + 1.0) / v.length)));
        }
        return most;
    }

    /** The distribution of the readings, measuring included. */
    private ComponentDistribution readings() {
        return ComponentDistribution.of(new MeasuredLot(lot.file(), lot.hash(), lot.serials(), lot.lines(), lot.valuePpbPerG(),
            Optional.empty(), List.of()));
    }
}
