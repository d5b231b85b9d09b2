package quietband.window;

import java.util.Optional;
import quietband.model.ModelFile;
import quietband.model.Vec;
import quietband.report.Words;
import quietband.tuning.SpringAnswer;
import quietband.tuning.SpringPlanner;
import quietband.tuning.SpringWish;
import quietband.units.Amounts;
import quietband.units.Dimension;

/** {@code springs}: rates, places and parts for a wanted corner on every axis. */
final class SpringsProposal implements Proposal {

    @Override
    public String name() {
        return "springs";
    }

    @Override
    public Section section() {
        return Section.PLATFORM;
    }

    @Override
    public Optional<Question> question() {
        return Optional.of(new Question("Corner wanted on every axis:", "90 Hz"));
    }

    @Override
    public Offer offer(ModelFile model, String answer) {
        double corner = Amounts.read(answer, Dimension.FREQUENCY);
        SpringWish wish = new SpringWish(Optional.of(Vec.all(corner)), Optional.empty(), false, SpringWish.Kind.SUITED,
            Optional.empty(), true, Optional.empty(), Draws.SEED);
        SpringAnswer found = SpringPlanner.plan(model, wish, 1, judged -> { });
        Vec reached = found.cornerHz();
        return new Offer(found.changed(), "corners at " + Words.hz(reached.x()) + ", " + Words.hz(reached.y()) + ", "
            + Words.hz(reached.z()) + (found.met() ? "" : "; some wish or check is not met"));
    }
}
