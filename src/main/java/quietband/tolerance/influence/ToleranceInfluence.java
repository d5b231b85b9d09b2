package quietband.tolerance.influence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.hipparchus.stat.correlation.SpearmansCorrelation;
import quietband.model.quantity.Quantities;
import quietband.tolerance.campaign.FirstUnits;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.draw.DrawnTolerance;
import quietband.tolerance.draw.ImpossibleUnitException;
import quietband.tolerance.draw.ToleranceDraws;
import quietband.tolerance.judge.MonteCarloPlan;
import quietband.tolerance.judge.UnitJudge;

/**
 * Which tolerance costs the most, in the nominal condition: Sobol indices and rank correlation of the worst margin, and
 * the yield with each tolerance halved, on the same units.
 *
 * @param lines       one per tolerance, in the order of the file
 * @param evaluations how many units were worked out for it
 * @param halvedUnits on the yield of how many units the halving was tried
 */
public record ToleranceInfluence(List<Line> lines, long evaluations, long halvedUnits) {

    /** Rows of Saltelli's samples. */
    public static final int ROWS = 1024;

    private static final int LEAST_HALVED = 10_000;

    public ToleranceInfluence {
        lines = List.copyOf(lines);
    }

    /**
     * One tolerance.
     *
     * @param name  as in the file
     * @param group names of the tolerances that share its indices because correlations tie them; itself alone otherwise
     * @param sobol of the group
     * @param rank  Spearman's correlation of the margin with the drawn number (of several: the one with most)
     * @param from  yield as it is
     * @param to    yield with this tolerance's value halved
     */
    public record Line(String name, List<String> group, SobolIndices.Index sobol, double rank, double from, double to) {

        public Line {
            group = List.copyOf(group);
        }
    }

    /**
     * Works it out.
     *
     * @param outcome    of the Monte Carlo with the same plan
     * @param confidence of the intervals
     */
    public static ToleranceInfluence of(MonteCarloPlan plan, MonteCarloResult outcome, double confidence, int threads) {
        ToleranceDraws scatter = plan.scatter();
        List<int[]> groups = new ArrayList<>();
        scatter.groups().forEach(g -> groups.add(g.stream().flatMapToInt(e -> IntStream.range(scatter.first(e),
            scatter.first(e) + scatter.count(e))).toArray()));
        SobolIndices.Estimate sobol = SobolIndices.of(scatter.size(), groups, ROWS, confidence, plan.seed(), threads, () -> margin(plan));
        int units = (int) Math.min(outcome.units(), Math.max(LEAST_HALVED, Math.min(FirstUnits.MOST, outcome.units() / 2)));
        HalvedTolerance halving = new HalvedTolerance(plan, outcome.first(), units, threads);
        double[] gained = halving.gained(IntStream.range(0, scatter.count()).mapToObj(scatter::halved).toList());
        double yield = (double) outcome.met(0) / outcome.units();
        List<Line> lines = new ArrayList<>();
        for (int e = 0; e < scatter.count(); e++) {
            int entry = e;
            int g = IntStream.range(0, groups.size()).filter(i -> scatter.groups().get(i).contains(entry)).findFirst().orElseThrow();
            double to = Math.max(0, Math.min(1, yield + gained[e]));
            lines.add(new Line(scatter.name(e), scatter.groups().get(g).stream().map(scatter::name).toList(),
                sobol.indices().get(g), rank(scatter, e, sobol), yield, to));
        }
        long evaluations = (long) ROWS * (groups.size() + 2) + halving.judged();
        return new ToleranceInfluence(lines, evaluations, units);
    }

    /** The margin of the unit at a point, dB; where no such unit can be, that of the design as written. */
    private static ToDoubleFunction<double[]> margin(MonteCarloPlan plan) {
        UnitJudge judge = plan.nominalJudge(false);
        double otherwise = judge.margin(plan.nominal());
        return z -> {
            Quantities drawn = plan.scatter().at(z);
            if (!plan.scatter().possible(drawn)) {
                return otherwise;
            }
            try {
                return judge.margin(plan.unit(0, drawn));
            } catch (ImpossibleUnitException e) {
                return otherwise;
            }
        };
    }

    private static double rank(ToleranceDraws scatter, int entry, SobolIndices.Estimate sobol) {
        int rows = sobol.a().length;
        DrawnTolerance e = scatter.entries().get(entry);
        int columns = e.isLot() ? 3 : e.count();
        double[][] drawn = new double[columns][rows];
        for (int r = 0; r < rows; r++) {
            double[] z = scatter.correlated(sobol.points()[r]);
            for (int c = 0; c < columns; c++) {
                drawn[c][r] = e.isLot() ? e.tolerance().lot().orElseThrow().rows()
                    .get(DrawnTolerance.row(z[e.first()], e.tolerance().lot().orElseThrow().rows().size())).get(c) : z[e.first() + c];
            }
        }
        SpearmansCorrelation spearman = new SpearmansCorrelation();
        double most = 0;
        for (double[] column : drawn) {
            // what does not vary has none
            double rho = Arrays.stream(column).distinct().limit(2).count() < 2 ? 0 : spearman.correlation(column, sobol.a());
            most = Math.abs(rho) > Math.abs(most) ? rho : most; // false for NaN: margins that do not vary
        }
        return most;
    }
}
