package quietband.study.trade;

import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import java.util.function.ToDoubleFunction;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.tolerance.campaign.MonteCarlo;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.judge.MonteCarloPlan;
import quietband.tuning.trade.TradeSearch;
import quietband.tuning.trade.VariedQuantity;

/**
 * The best design within bounds.
 *
 * @param found   the search
 * @param changed the model with what was found
 * @param goal    margin or yield
 */
public record DesignSearch(TradeSearch found, ModelFile changed, Goal goal) {

    /** What a search makes as large as it can. */
    public enum Goal { MARGIN, YIELD }

    /**
     * Searches.
     *
     * @param units drawn for each yield; of no meaning for the margin
     * @param told  how many designs have been judged; called from several threads
     * @throws quietband.tolerance.draw.ToleranceException for a yield of a model that has nothing to draw
     */
    public static DesignSearch of(ModelFile file, List<VariedQuantity> axes, Goal goal, long units, long seed, int threads,
                                  LongConsumer told) {
        Optional<ToDoubleFunction<Design>> yield = Optional.empty();
        if (goal == Goal.YIELD) {
            // fails at once with its own message where there is nothing to draw
            new MonteCarloPlan(file.design(), seed);
            yield = Optional.of(design -> good(design, units, seed));
        }
        TradeSearch found = TradeSearch.run(file.design(), axes, seed, threads, yield, told);
        return new DesignSearch(found, file.withQuantities(found.after().design().quantities()), goal);
    }

    private static double good(Design design, long units, long seed) {
        MonteCarloResult outcome = new MonteCarlo(new MonteCarloPlan(design, seed), new double[] {design.requirement().fromHz(),
            design.requirement().toHz()}, 1).run(units, () -> false, done -> { });
        return (double) outcome.met(0) / outcome.units();
    }
}
