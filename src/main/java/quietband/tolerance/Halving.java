package quietband.tolerance;

import java.util.List;
import java.util.stream.IntStream;
import quietband.model.Quantities;

/**
 * What halving a tolerance changes in the yield, on the first units of a campaign: all units that fail are judged again, as many as a
 * tenth of all that are next to failing, and every sixteenth of the others, which then stands for sixteen, since hardly any of
 * them changes sides.
 */
final class Halving {

    private static final double NEAR = 0.1;
    private static final int EACH = 16;

    private final Plan plan;
    private final FirstUnits before;
    private final int units;
    private final int threads;
    private final int[] chosen;
    /** How many units each of the chosen stands for. */
    private final double[] weight;

    /**
     * Chooses.
     *
     * @param units of how many the yield is that changes; as many or more are kept
     */
    Halving(Plan plan, FirstUnits before, int units, int threads) {
        this.plan = plan;
        this.before = before;
        this.units = units;
        this.threads = threads;
        double failing = IntStream.range(0, units).filter(u -> !before.met(u)).count();
        double threshold = before.below(Math.min(1, failing / units + NEAR), units);
        int[] far = IntStream.range(0, units).filter(u -> before.met(u) && before.marginDb(u) > threshold).toArray();
        int asked = (far.length + EACH - 1) / EACH;
        chosen = IntStream.concat(IntStream.range(0, asked).map(i -> far[i * EACH]),
            IntStream.range(0, units).filter(u -> !before.met(u) || before.marginDb(u) <= threshold)).toArray();
        weight = new double[chosen.length];
        for (int i = 0; i < weight.length; i++) {
            weight[i] = i < asked ? (double) far.length / asked : 1;
        }
    }

    /** How many units are judged for each tolerance. */
    int judged() {
        return chosen.length;
    }

    /** The change of the yield with each of some scatters, whose one tolerance each is halved. */
    double[] gained(List<Scatter> scatters) {
        int n = chosen.length;
        double[] after = Workers.all(scatters.size() * n, threads, () -> {
            UnitJudge judge = plan.nominalJudge(true);
            return i -> met(judge, scatters.get(i / n), chosen[i % n]) ? 1 : 0;
        });
        double[] gained = new double[scatters.size()];
        for (int i = 0; i < after.length; i++) {
            gained[i / n] += weight[i % n] * (after[i] - (before.met(chosen[i % n]) ? 1 : 0)) / units;
        }
        return gained;
    }

    private boolean met(UnitJudge judge, Scatter scatter, int unit) {
        for (int attempt = 0; attempt <= Campaign.MOST_ATTEMPTS; attempt++) {
            Quantities drawn = plan.draw(scatter, unit, attempt);
            if (drawn != null) {
                try {
                    return judge.judge(plan.unit(0, drawn)).met();
                } catch (ImpossibleUnit e) {
                    // the next attempt follows
                }
            }
        }
        throw Campaign.hopeless();
    }
}
