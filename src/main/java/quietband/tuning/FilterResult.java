package quietband.tuning;

import quietband.model.Design;
import quietband.response.StackVerdict;

/**
 * A filter and what it does to the fullest stack of a model.
 *
 * @param task    what was asked
 * @param found   the filters
 * @param changed the design with them
 * @param before  the fullest stack as the model stands
 * @param after   the same with the filters
 * @param seconds spent on the search
 */
public record FilterResult(FilterTask task, FilterFound found, Design changed, StackVerdict before, StackVerdict after,
                           double seconds) {

    /** Largest residual over its limit; NaN without a limit. */
    public static double worstRatio(StackVerdict verdict) {
        return verdict.asked() ? verdict.worst().residualPerG() / verdict.worst().limitPerG() : Double.NaN;
    }
}
