package quietband.tuning.trade;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongConsumer;
import java.util.function.ToDoubleFunction;
import quietband.model.Design;
import quietband.numerics.BoundedSearch;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;
import quietband.response.verdict.DesignMargins;

/**
 * The best design within bounds of several quantities.
 *
 * @param axes    what was varied
 * @param values  found, base units
 * @param before  the design as it was
 * @param after   the design found
 * @param goal    what was made largest: the worst margin in dB, or the yield
 * @param looks   how many designs were judged
 * @param binding what keeps it from being better: limits that it touches and bounds that it stands at
 */
public record TradeSearch(List<VariedQuantity> axes, double[] values, Assessment before, Assessment after, double goal,
    long looks,
                          List<String> binding) {

    private static final double AT_BOUND = 2e-3;
    private static final double NEARLY_DB = 0.5;

    public TradeSearch {
        axes = List.copyOf(axes);
        binding = List.copyOf(binding);
    }

    /**
     * Searches for the best worst margin under every limit of the design; with a yield for that first, and from there for the best yield.
     *
     * @param yield share of good units of a design, 0 to 1; empty for the margin
     * @param told  how many designs have been judged; called from several threads
     */
    public static TradeSearch run(Design design, List<VariedQuantity> axes, long seed, int threads,
        Optional<ToDoubleFunction<Design>> yield, LongConsumer told) {
        double[] start = new double[axes.size()];
        for (int i = 0; i < start.length; i++) {
            start[i] = axes.get(i).share(design.quantities().value(axes.get(i).what().slot(0)));
        }
        AtomicLong looks = new AtomicLong();
        BoundedSearch.Result result = BoundedSearch.run(start, seed, threads, BoundedSearch.telling(x -> {
            DesignMargins margins = DesignMargins.of(TradeSweep.changed(design, axes, values(axes, x)));
            return new BoundedSearch.Score(margins.goal(), margins.worstOver());
        }, looks, told));
        if (yield.isPresent()) {
            long before = result.looks();
            BoundedSearch.Result drawn = BoundedSearch.refine(List.of(result.best().x(), start), threads, BoundedSearch.telling(
                x -> yields(TradeSweep.changed(design, axes, values(axes, x)), yield.get()), looks, told));
            result = new BoundedSearch.Result(drawn.best(), before + drawn.looks());
        }
        double[] found = values(axes, result.best().x());
        Design best = TradeSweep.changed(design, axes, found);
        double goal = yield.map(y -> y.applyAsDouble(best)).orElse(result.best().score().goal());
        return new TradeSearch(axes, found, Assessor.assess(design), Assessor.assess(best), goal, result.looks(),
            binding(axes, result.best().x(), DesignMargins.of(best)));
    }

    /** Of designs with the same yield the one with more margin; nothing is drawn where the design itself does not all but hold. */
    private static BoundedSearch.Score yields(Design design, ToDoubleFunction<Design> yield) {
        DesignMargins margins = DesignMargins.of(design);
        double nominal = Math.min(margins.goal(), -margins.worstOver());
        double goal = nominal < -NEARLY_DB ? nominal : 100 * yield.applyAsDouble(design) + 0.01 * margins.goal();
        return new BoundedSearch.Score(goal, margins.worstOver());
    }

    private static double[] values(List<VariedQuantity> axes, double[] x) {
        double[] values = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            values[i] = axes.get(i).at(x[i]);
        }
        return values;
    }

    private static List<String> binding(List<VariedQuantity> axes, double[] x, DesignMargins margins) {
        List<String> list = new ArrayList<>();
        margins.touched().forEach((name, over) -> list.add("limit of " + name + (over > 0 ? ", not met" : "")));
        for (int i = 0; i < x.length; i++) {
            if (x[i] < AT_BOUND || x[i] > 1 - AT_BOUND) {
                boolean lower = x[i] < 0.5 == axes.get(i).from() < axes.get(i).to();
                list.add((lower ? "lower" : "upper") + " bound of " + axes.get(i).what().path());
            }
        }
        return list;
    }
}
