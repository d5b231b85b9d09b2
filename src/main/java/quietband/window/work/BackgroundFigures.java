package quietband.window.work;

import java.util.List;
import java.util.Optional;
import quietband.response.verdict.Assessment;
import quietband.tuning.cures.CoverageGap;

/**
 * What is computed behind the first picture: the same figures that {@code assess} gives for the model.
 *
 * @param view       what they are of
 * @param assessment the verdict
 * @param gaps       with causes and cures; empty while they are searched
 * @param details    what the cards show beyond it; empty while they are computed
 */
public record BackgroundFigures(DesignView view, Assessment assessment, Optional<List<CoverageGap>> gaps, Optional<RoleFigures> details) {

    /** Whether they are of this view, not of an earlier one. */
    @SuppressWarnings("ReferenceEquality") // the very view: a later one may hold equal values
    public boolean of(DesignView other) {
        return view == other;
    }
}
