package quietband.window.work;

import java.util.Optional;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.report.file.QuantityText;
import quietband.tuning.parts.SpringWish;
import quietband.tuning.springs.SpringAnswer;
import quietband.tuning.springs.SpringPlanner;
import quietband.units.Amounts;
import quietband.units.Dimension;
import quietband.window.bench.ModelSection;

/** {@code springs}: rates, places and parts for a wanted natural frequency on every axis. */
final class SpringsProposal implements Proposal {

    @Override
    public String name() {
        return "springs";
    }

    @Override
    public ModelSection section() {
        return ModelSection.PLATFORM;
    }

    @Override
    public Optional<Question> question() {
        return Optional.of(new Question("Natural frequency wanted on every axis:", "90 Hz"));
    }

    @Override
    public Offer offer(ModelFile model, String answer) {
        double corner = Amounts.read(answer, Dimension.FREQUENCY);
        SpringWish wish = new SpringWish(Optional.of(Vec.all(corner)), Optional.empty(), false, SpringWish.Kind.SUITED,
            Optional.empty(), true, Optional.empty(), BackgroundMonteCarlo.SEED);
        SpringAnswer found = SpringPlanner.plan(model, wish, 1, judged -> { });
        Vec reached = found.cornerHz();
        return new Offer(found.changed(), "natural frequencies at " + QuantityText.hz(reached.x())
            + ", " + QuantityText.hz(reached.y()) + ", "
            + QuantityText.hz(reached.z()) + (found.met() ? "" : "; a target or check is not met"));
    }
}
