package quietband.filter.design;

import quietband.filter.FilterTask;
import quietband.filter.fixedpoint.FoundFilters;
import quietband.model.Design;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;
import quietband.response.verdict.StackVerdict;

/**
 * A filter and what it does to the fullest stack of a model.
 *
 * @param task    what was asked
 * @param found   the filters
 * @param before  the assessment as the model stands
 * @param after   the same with the filters
 * @param seconds spent on the search
 */
public record FilterResult(FilterTask task, FoundFilters found, Assessment before, Assessment after, double seconds) {

    /** Assesses a design before and after. */
    public static FilterResult of(FilterTask task, FoundFilters found, Design changed, double seconds) {
        return new FilterResult(task, found, Assessor.assess(task.design()), Assessor.assess(changed), seconds);
    }

    /** The fullest stack's verdict. */
    public static StackVerdict fullest(Assessment a) {
        return a.verdict(a.fullest());
    }

    /** The design with the filters. */
    public Design changed() {
        return after.design();
    }

    /** Largest residual over its limit; NaN without a limit. */
    public static double worstRatio(StackVerdict verdict) {
        return verdict.asked() ? verdict.worst().residualPerG() / verdict.worst().limitPerG() : Double.NaN;
    }
}
