package quietband.tolerance.influence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import quietband.model.quantity.Quantities;
import quietband.tolerance.campaign.FirstUnits;
import quietband.tolerance.draw.ImpossibleUnitException;
import quietband.tolerance.draw.ToleranceDraws;
import quietband.tolerance.judge.MonteCarloPlan;
import quietband.tolerance.judge.UnitJudge;
import quietband.work.Workers;

/**
 * What halving a tolerance changes in the yield, on the first units of a campaign. Judged again are all units that fail, those next to
 * failing for as far as some of them change sides, and of the others, of which hardly any changes, some evenly spread ones that stand for
 * the rest.
 */
final class HalvedTolerance {

    /** Share of all units in one step away from the limit. */
    private static final double STEP = 0.025;
    /** How many of the others are judged, as a share of all units. */
    private static final double SPREAD = 0.03;

    private final MonteCarloPlan plan;
    private final FirstUnits before;
    private final int units;
    private final int threads;
    private final int[] failing;
    /** The others, those with the least margin first. */
    private final int[] passing;
    private long judged;

    /**
     * Chooses.
     *
     * @param units of how many the yield is that changes; as many or more are kept
     */
    HalvedTolerance(MonteCarloPlan plan, FirstUnits before, int units, int threads) {
        this.plan = plan;
        this.before = before;
        this.units = units;
        this.threads = threads;
        failing = IntStream.range(0, units).filter(u -> !before.met(u)).toArray();
        passing = IntStream.range(0, units).filter(before::met).boxed().sorted(Comparator.comparingDouble(before::marginDb))
            .mapToInt(Integer::intValue).toArray();
    }

    /** How many units have been judged. */
    long judged() {
        return judged;
    }

    /** The change of the yield with each of some scatters, whose one tolerance each is halved. */
    double[] gained(List<ToleranceDraws> scatters) {
        int n = scatters.size();
        double[] gained = new double[n];
        add(gained, 1, changes(scatters, e -> failing));
        int step = (int) Math.ceil(STEP * units);
        int[] from = new int[n];
        boolean[] more = new boolean[n];
        Arrays.fill(more, true);
        for (int at = 0; at < passing.length && any(more); at += step) {
            int begin = at;
            int end = Math.min(passing.length, at + step);
            int[] lost = changes(scatters, e -> more[e] ? Arrays.copyOfRange(passing, begin, end) : new int[0]);
            add(gained, -1, lost);
            for (int e = 0; e < n; e++) {
                from[e] = more[e] ? end : from[e];
                more[e] &= lost[e] > 0;
            }
        }
        int spread = (int) Math.ceil(SPREAD * units);
        int[] lost = changes(scatters, e -> spread(from[e], Math.min(spread, passing.length - from[e])));
        for (int e = 0; e < n; e++) {
            int rest = passing.length - from[e];
            gained[e] = (gained[e] - lost[e] * Math.max(1, (double) rest / spread)) / units;
        }
        return gained;
    }

    /** Some of the passing units from a place on, evenly spread. */
    private int[] spread(int from, int count) {
        return IntStream.range(0, count).map(i -> passing[from + (int) ((long) i * (passing.length - from) / count)]).toArray();
    }

    private static void add(double[] sum, double sign, int... counts) {
        for (int e = 0; e < sum.length; e++) {
            sum[e] += sign * counts[e];
        }
    }

    private static boolean any(boolean... some) {
        return IntStream.range(0, some.length).anyMatch(e -> some[e]);
    }

    /** How many of some units change sides with each scatter; which units is told by its number. */
    private int[] changes(List<ToleranceDraws> scatters, IntFunction<int[]> which) {
        List<Integer> numbers = new ArrayList<>();
        List<Integer> chosen = new ArrayList<>();
        for (int e = 0; e < scatters.size(); e++) {
            for (int unit : which.apply(e)) {
                numbers.add(e);
                chosen.add(unit);
            }
        }
        judged += chosen.size();
        double[] changed = Workers.all(chosen.size(), threads, () -> {
            UnitJudge judge = plan.nominalJudge(true);
            return i -> met(judge, scatters.get(numbers.get(i)), chosen.get(i)) == before.met(chosen.get(i)) ? 0 : 1;
        });
        int[] counts = new int[scatters.size()];
        for (int i = 0; i < changed.length; i++) {
            counts[numbers.get(i)] += changed[i] > 0 ? 1 : 0;
        }
        return counts;
    }

    private boolean met(UnitJudge judge, ToleranceDraws scatter, int unit) {
        for (int attempt = 0; attempt <= ImpossibleUnitException.MOST_ATTEMPTS; attempt++) {
            Quantities drawn = plan.draw(scatter, unit, attempt);
            if (drawn != null) {
                try {
                    return judge.judge(plan.unit(0, drawn)).met();
                } catch (ImpossibleUnitException e) {
                    // the next attempt follows
                }
            }
        }
        throw ImpossibleUnitException.hopeless();
    }
}
