package quietband.window;

import java.util.List;
import java.util.Optional;
import quietband.response.Assessment;
import quietband.tuning.Gap;

/**
 * What is computed behind the first picture: the same figures that {@code assess} gives for the model.
 *
 * @param view       what they are of
 * @param assessment the verdict
 * @param gaps       with causes and cures; empty while they are searched
 * @param details    what the cards show beyond it; empty while they are computed
 */
record Figures(View view, Assessment assessment, Optional<List<Gap>> gaps, Optional<Details> details) {

    /** Whether they are of this view, not of an earlier one. */
    @SuppressWarnings("ReferenceEquality") // the very view: a later one may hold equal values
    boolean of(View other) {
        return view == other;
    }
}
