package quietband.window;

import java.util.List;
import java.util.Optional;
import quietband.model.FileValue;
import quietband.model.ModelFile;
import quietband.response.ResidualCurves;

/**
 * What is shown right after a change.
 *
 * @param serial rises by one with every change
 * @param bench  what is worked on
 * @param curves of the model in view
 * @param ghost  curves before the last change; empty at the start
 * @param values every value of the model as its file has it
 */
record View(long serial, Bench bench, ResidualCurves curves, Optional<ResidualCurves> ghost, List<FileValue> values) {

    View {
        values = List.copyOf(values);
    }

    /** The model in view. */
    ModelFile model() {
        return bench.model();
    }
}
