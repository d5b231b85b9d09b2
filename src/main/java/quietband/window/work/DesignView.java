package quietband.window.work;

import java.util.List;
import java.util.Optional;
import quietband.model.edit.FileValue;
import quietband.model.edit.ModelFile;
import quietband.response.ResidualCurves;
import quietband.window.bench.EditingBench;

/**
 * What is shown right after a change.
 *
 * @param serial rises by one with every change
 * @param bench  what is worked on
 * @param curves of the model in view
 * @param ghost  curves before the last change; empty at the start
 * @param values every value of the model as its file has it
 */
public record DesignView(long serial, EditingBench bench, ResidualCurves curves, Optional<ResidualCurves> ghost, List<FileValue> values) {

    public DesignView {
        values = List.copyOf(values);
    }

    /** The model in view. */
    public ModelFile model() {
        return bench.model();
    }
}
