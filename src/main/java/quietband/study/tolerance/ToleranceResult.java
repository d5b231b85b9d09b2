package quietband.study.tolerance;

import java.util.Optional;
import quietband.lot.Proportion;
import quietband.model.Requirement;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.influence.LikeliestFailure;
import quietband.tolerance.influence.ToleranceInfluence;
import quietband.tolerance.judge.MonteCarloPlan;

/**
 * Everything that a Monte Carlo with its questions found.
 *
 * @param plan       what was drawn from
 * @param outcome    of the units
 * @param influence  of each tolerance; empty when it was stopped before
 * @param likeliest  failing unit; empty when none was found or it was stopped before
 * @param confidence of every interval
 * @param seconds    that the units took
 */
public record ToleranceResult(MonteCarloPlan plan, MonteCarloResult outcome, Optional<ToleranceInfluence> influence,
    Optional<LikeliestFailure> likeliest,
                       double confidence, double seconds) {

    /** Whether it was stopped before influence and likeliest failing unit were known. */
    public boolean unasked() {
        return influence.isEmpty();
    }

    /** Yield in a condition. */
    public Proportion yieldIn(int condition) {
        return new Proportion(outcome.met(condition), outcome.units(), confidence);
    }

    /** Yield in all conditions at once. */
    public Proportion yieldInAll() {
        return new Proportion(outcome.metInAll(), outcome.units(), confidence);
    }

    /** The yield that is asked, when one is. */
    public Optional<Requirement.Yield> asked() {
        return plan.nominal().requirement().yield();
    }

    /** What the nominal yield is at least, at the confidence that is asked for (one-sided). */
    public double atLeast() {
        return new Proportion(outcome.met(0), outcome.units(), asked().map(Requirement.Yield::confidence).orElse(confidence))
            .atLeast();
    }

    /** Whether the required yield is shown; empty when none is stated. */
    public Optional<Boolean> yieldMet() {
        return asked().map(y -> atLeast() >= y.share());
    }
}
