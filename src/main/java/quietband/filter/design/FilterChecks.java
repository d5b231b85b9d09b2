package quietband.filter.design;

import java.util.Locale;
import quietband.demand.PhaseNoise;
import quietband.demand.ResidualDemand;
import quietband.filter.FilterException;
import quietband.filter.FilterForm;
import quietband.filter.FilterGoal;
import quietband.filter.FilterTask;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Requirement;
import quietband.spectrum.LogGrid;

/** What must hold before a filter is designed. */
public final class FilterChecks {

    private static final int MOST_TAPS = 512;
    private static final int MOST_SECTIONS = 10;

    private FilterChecks() { }

    static void check(FilterTask task) {
        Design design = task.design();
        Cancellation c = design.cancellation().orElseThrow(() -> new FilterException(
            "the model has no cancellation to design a filter for; add a cancellation block with sensor and path"));
        Requirement r = design.requirement();
        if (!c.path().sampled()) {
            throw new FilterException("a digital filter needs a sample rate and the model has none; add "
                + "cancellation.path.sample_rate, e.g. 100 kHz, or design a network with --analog 1");
        }
        if (c.path().sampleRateHz() / 2 <= r.fromHz()) {
            throw new FilterException(String.format(Locale.ROOT, "half the sample rate, %.5g Hz, is below the band, which begins at "
                + "%.5g Hz; raise cancellation.path.sample_rate", c.path().sampleRateHz() / 2, r.fromHz()));
        }
        int most = task.form() == FilterForm.TAPS ? MOST_TAPS : MOST_SECTIONS;
        if (task.count() < 1 || task.count() > most) {
            throw new FilterException("--count " + task.count() + ": between 1 and " + most + " " + task.form().key());
        }
        int each = task.form() == FilterForm.TAPS ? task.count() : 4 * task.count() + 1;
        if (task.goal() == FilterGoal.FLAT && each > 2 * task.grid().length) {
            throw new FilterException(3 * each + " coefficients cannot be found from the " + 6 * task.grid().length
                + " numbers of " + task.grid().length + " frequencies; lower --count or raise --points");
        }
        if (!(task.maxGain() > 0) || !Double.isFinite(task.maxGain())) {
            throw new FilterException("the largest gain must be above 0; write e.g. --max-gain \"20 dB\"");
        }
        double[] ends = task.ends();
        task.measured().filter(m -> !m.covers(ends[0], ends[1])).ifPresent(m -> {
            throw new FilterException(String.format(Locale.ROOT, "--response: the measured response covers %.5g to %.5g Hz and the "
                + "band is %.5g to %.5g Hz; measure the whole band",
                m.frequencyHz()[0], m.frequencyHz()[m.frequencyHz().length - 1], ends[0], ends[1]));
        });
        goal(task);
    }

    /** What the goal needs of the model. */
    public static void goal(FilterTask task) {
        Design design = task.design();
        if (task.goal() == FilterGoal.LIMIT && !new ResidualDemand(design).asked()) {
            throw new FilterException("--goal limit needs a limit and the model has none; add requirement.residual or take "
                + "--goal flat");
        }
        if (task.goal() == FilterGoal.NOISE) {
            noise(design);
        }
    }

    private static void noise(Design design) {
        PhaseNoise noise = new PhaseNoise(design);
        boolean driven = design.vibration().axes().stream().anyMatch(a -> design.vibration().drive(a).isPresent());
        if (!driven) {
            throw new FilterException("--goal noise needs vibration.random and the model has none: without vibration no "
                + "cancellation is the quietest");
        }
        for (double f : LogGrid.between(400, design.requirement().fromHz(), design.requirement().toHz())) {
            boolean shaken = Axis.ALL.stream().anyMatch(a -> noise.density(a, f) > 0);
            if (!shaken && noise.staticNoise(f) == 0) {
                throw new FilterException(String.format(Locale.ROOT, "nothing makes noise at %.5g Hz, so any cancellation is above none "
                    + "there; add oscillator.static_phase_noise, or a profile over the whole band", f));
            }
        }
    }
}
