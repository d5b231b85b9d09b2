package quietband.window.work;

import java.util.Optional;
import quietband.lot.Proportion;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.influence.ToleranceInfluence;
import quietband.tolerance.judge.MonteCarloPlan;

/**
 * How far a Monte Carlo beside the window has come.
 *
 * @param view      what is drawn from
 * @param plan      tolerances and conditions
 * @param outcome   of the units so far
 * @param influence of each tolerance; empty until it is worked out
 * @param wanted    how many units it goes up to
 */
public record MonteCarloProgress(DesignView view, MonteCarloPlan plan, MonteCarloResult outcome,
    Optional<ToleranceInfluence> influence, long wanted) {

    static final double CONFIDENCE = 0.95;

    /** Yield in a condition. */
    public Proportion yieldIn(int condition) {
        return new Proportion(outcome.met(condition), outcome.units(), CONFIDENCE);
    }
}
