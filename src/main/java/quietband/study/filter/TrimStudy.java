package quietband.study.filter;

import java.nio.file.Path;
import java.util.List;
import quietband.identification.trim.PathTrim;
import quietband.identification.trim.TrimmedUnit;
import quietband.model.edit.ModelFile;
import quietband.response.verdict.StackVerdict;

/** A cancellation trimmed from two runs on the shaker, and what the models of its units do. */
public record TrimStudy(PathTrim trim, List<Unit> units) {

    public TrimStudy {
        units = List.copyOf(units);
    }

    /**
     * A unit, its models and what their fullest stacks do.
     *
     * @param found    model with the errors found and the weights of the run
     * @param trimmed  the same with the new weights
     * @param before   verdict of {@code found}
     * @param after    verdict of {@code trimmed}
     * @param absorbed verdict without errors, weighted by the unit's own sensitivity
     */
    public record Unit(TrimmedUnit unit, ModelFile found, ModelFile trimmed, StackVerdict before, StackVerdict after,
                       StackVerdict absorbed) { }

    /**
     * Reads two runs and trims every unit in them.
     *
     * @param off    run with the cancellation off
     * @param on     run with the cancellation on
     * @param bolted whether the units stood on the shaker without their platform
     */
    public static TrimStudy of(ModelFile file, Path off, Path on, boolean bolted) {
        PathTrim trim = PathTrim.of(file, off, on, bolted);
        return new TrimStudy(trim, trim.units().stream().map(u -> {
            ModelFile found = trim.found(u);
            ModelFile trimmed = trim.trimmed(u);
            return new Unit(u, found, trimmed, PathTrim.verdict(found), PathTrim.verdict(trimmed), PathTrim.verdict(trim.absorbed(u)));
        }).toList());
    }
}
