package quietband.window.work;

import java.util.Optional;
import quietband.model.edit.ModelFile;
import quietband.report.file.NumberFormat;
import quietband.study.orient.OrientStudy;
import quietband.tuning.orient.Orientation;
import quietband.window.bench.ModelSection;

/** {@code orient}: the turn of the resonator that serves best as seen through platform and cancellation. */
final class OrientProposal implements Proposal {

    @Override
    public String name() {
        return "orient";
    }

    @Override
    public ModelSection section() {
        return ModelSection.RESONATOR;
    }

    @Override
    public Optional<Question> question() {
        return Optional.empty();
    }

    @Override
    public Offer offer(ModelFile model, String answer) {
        if (!(model.design().oscillator().resonator().sensitivityPerG().length() > 0)) {
            throw new IllegalArgumentException("oscillator.resonator.sensitivity is 0 on every axis: there is nothing to turn");
        }
        Orientation best = Orientation.of(model.design(), Orientation.Goal.RESIDUAL);
        return new Offer(OrientStudy.turned(model, best.turn()), "turns the resonator by "
            + NumberFormat.brief(Math.toDegrees(best.turn().angle()), 4) + " deg");
    }
}
