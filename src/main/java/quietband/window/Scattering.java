package quietband.window;

import java.util.Optional;
import quietband.tolerance.Influence;
import quietband.tolerance.Outcome;
import quietband.tolerance.Plan;
import quietband.tolerance.Proportion;

/**
 * How far a Monte Carlo beside the window has come.
 *
 * @param view      what is drawn from
 * @param plan      tolerances and conditions
 * @param outcome   of the units so far
 * @param influence of each tolerance; empty until it is worked out
 * @param wanted    how many units it goes up to
 */
record Scattering(View view, Plan plan, Outcome outcome, Optional<Influence> influence, long wanted) {

    static final double CONFIDENCE = 0.95;

    /** Yield in a condition. */
    Proportion yieldIn(int condition) {
        return new Proportion(outcome.met(condition), outcome.units(), CONFIDENCE);
    }
}
