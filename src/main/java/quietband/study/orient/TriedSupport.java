package quietband.study.orient;

import java.util.List;
import java.util.Optional;
import quietband.model.edit.ModelFile;
import quietband.response.verdict.Assessor;
import quietband.response.verdict.StackVerdict;
import quietband.tuning.orient.BlankShock;
import quietband.tuning.orient.Orientation;
import quietband.tuning.orient.SupportRow;

/**
 * A support of a table tried.
 *
 * @param row    of the table
 * @param model  with it, turned as serves best
 * @param before figure of the goal with it and the turn the model has
 * @param after  figure of the goal with its best turn
 * @param bare   verdict of the resonator bolted down, without cancellation, turned
 * @param full   verdict of the stack combined, turned
 * @param shock  what the blank sees of the model's shock; empty without one
 */
public record TriedSupport(SupportRow row, ModelFile model, double before, double after, StackVerdict bare, StackVerdict full,
                           Optional<BlankShock> shock) {

    /** Turns a model with the support in it. */
    static TriedSupport of(SupportRow row, ModelFile with, Orientation.Goal goal) {
        Orientation best = Orientation.of(with.design(), goal);
        ModelFile model = OrientStudy.turned(with, best.turn());
        List<StackVerdict> verdicts = Assessor.assess(model.design()).verdicts();
        return new TriedSupport(row, model, best.before(), best.after(), verdicts.get(0), verdicts.get(verdicts.size() - 1),
            BlankShock.of(model.design()));
    }

    /** Whether it resonates within the band. */
    public boolean inBand() {
        return row.lowestHz() <= model.design().requirement().toHz();
    }
}
