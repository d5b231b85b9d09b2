package quietband.tolerance.influence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import quietband.demand.RequirementResult;
import quietband.model.quantity.Quantities;
import quietband.numerics.NormalCurve;
import quietband.response.verdict.Assessor;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.draw.DrawnTolerance;
import quietband.tolerance.draw.ImpossibleUnitException;
import quietband.tolerance.draw.ToleranceDraws;
import quietband.tolerance.judge.MonteCarloPlan;
import quietband.tolerance.judge.UnitJudge;

/**
 * The unit that breaks the residual or the phase-noise limit in the nominal condition and is likelier than any other that
 * does: the nearest such point in the space of standard normals. Rows of lots are equally likely; the nearest over them counts.
 *
 * @param unit     its numbers
 * @param distance from the design as written, in standard deviations
 * @param parts    what moved most, in words
 * @param failed   what it fails, judged by {@code assess}
 * @param bounded  whether the search was ended by its bound of work: a likelier one may exist
 */
public record LikeliestFailure(Quantities unit, double distance, List<String> parts, List<RequirementResult> failed, boolean bounded) {

    private static final double BEYOND_DB = 0.001;
    private static final int MOST_ROWS = 6;
    /** Rows of a lot that are looked at, evenly spread. */
    private static final int ROWS_TRIED = 2000;
    /** Evaluations times coordinates: both a gradient and a unit take longer with each. */
    private static final long MOST_WORK = 3_000_000;
    private static final long LEAST_EVALUATIONS = 1000;

    public LikeliestFailure {
        parts = List.copyOf(parts);
        failed = List.copyOf(failed);
    }

    /**
     * Searches from the design itself, for the lot rows with the least margin, and from the nearest failing units of a Monte Carlo.
     *
     * @return empty when no limit is stated, or nothing fails within eight standard deviations
     */
    public static Optional<LikeliestFailure> of(MonteCarloPlan plan, MonteCarloResult outcome) {
        UnitJudge judge = plan.nominalJudge(true);
        ToleranceDraws scatter = plan.scatter();
        ToDoubleFunction<double[]> margin = z -> {
            Quantities drawn = scatter.at(z);
            if (!scatter.possible(drawn)) {
                return 300;
            }
            try {
                double residual = judge.margin(plan.unit(0, drawn));
                boolean asked = judge.residualAsked();
                double noise = judge.noiseAsked() ? judge.noiseMarginDb() : 300;
                // a little beyond, so that the unit fails on every grid
                return Math.min(asked ? residual : 300, noise) + BEYOND_DB;
            } catch (ImpossibleUnitException e) {
                return 300;
            }
        };
        boolean[] free = new boolean[scatter.size()];
        for (int e = 0; e < scatter.count(); e++) {
            for (int i = scatter.first(e); i < scatter.first(e) + scatter.count(e); i++) {
                free[i] = !scatter.isLot(e);
            }
        }
        NearestPoint search = new NearestPoint(margin, free, Math.max(LEAST_EVALUATIONS, MOST_WORK / Math.max(1, free.length)));
        double[] best = null;
        for (double[] start : starts(plan, outcome, margin)) {
            double[] found = search.from(start);
            if (found != null && (best == null || distance(found, free) < distance(best, free))) {
                best = found;
            }
        }
        return best == null ? Optional.empty() : Optional.of(described(plan, best, distance(best, free), search.bounded()));
    }

    private static List<double[]> starts(MonteCarloPlan plan, MonteCarloResult outcome, ToDoubleFunction<double[]> margin) {
        ToleranceDraws scatter = plan.scatter();
        List<double[]> starts = new ArrayList<>();
        for (int e = 0; e < scatter.count(); e++) {
            if (scatter.isLot(e)) {
                int rows = scatter.entries().get(e).tolerance().lot().orElseThrow().rows().size();
                int at = scatter.first(e);
                int tried = Math.min(rows, ROWS_TRIED);
                IntStream.range(0, tried).map(k -> (int) ((long) k * rows / tried)).forEach(r -> {
                    double[] z = new double[scatter.size()];
                    z[at] = NormalCurve.quantile((r + 0.5) / rows);
                    starts.add(z);
                });
            }
        }
        if (starts.isEmpty()) {
            starts.add(new double[scatter.size()]);
        }
        double[] margins = starts.stream().mapToDouble(margin).toArray();
        List<double[]> chosen = new ArrayList<>(IntStream.range(0, margins.length).boxed()
            .sorted(Comparator.comparingDouble((Integer k) -> margins[k])).limit(MOST_ROWS).map(starts::get).toList());
        outcome.worst().stream().filter(r -> !r.verdicts().get(0).met()).limit(2)
            .forEach(r -> chosen.add(scatter.normals(plan.seed(), r.index(), r.attempts())));
        return chosen;
    }

    private static double distance(double[] z, boolean[] free) {
        double sum = 0;
        for (int i = 0; i < z.length; i++) {
            sum += free[i] ? z[i] * z[i] : 0;
        }
        return Math.sqrt(sum);
    }

    private static LikeliestFailure described(MonteCarloPlan plan, double[] z, double distance, boolean bounded) {
        ToleranceDraws scatter = plan.scatter();
        Quantities unit = scatter.at(z);
        List<Integer> order = new ArrayList<>(IntStream.range(0, scatter.count()).boxed().toList());
        order.sort(Comparator.comparingDouble((Integer e) -> -part(scatter, z, e)));
        List<String> parts = new ArrayList<>();
        for (int e : order) {
            if (scatter.isLot(e)) {
                var lot = scatter.entries().get(e).tolerance().lot().orElseThrow();
                parts.add(scatter.name(e) + " " + lot.serials().get(DrawnTolerance.row(z[scatter.first(e)], lot.rows().size())));
            } else if (part(scatter, z, e) > 0.1 * distance && parts.size() < 4) {
                parts.add(String.format(Locale.ROOT, "%s %.2f sigma", scatter.name(e), part(scatter, z, e)));
            }
        }
        List<RequirementResult> failed = Assessor.assess(plan.unit(0, unit)).requirements().stream()
            .filter(r -> !r.met()).toList();
        return new LikeliestFailure(unit, distance, parts, failed, bounded);
    }

    private static double part(ToleranceDraws scatter, double[] z, int entry) {
        if (scatter.isLot(entry)) {
            return 0;
        }
        double sum = 0;
        for (int i = scatter.first(entry); i < scatter.first(entry) + scatter.count(entry); i++) {
            sum += z[i] * z[i];
        }
        return Math.sqrt(sum);
    }
}
