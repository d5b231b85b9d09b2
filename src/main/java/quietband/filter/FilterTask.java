package quietband.filter;

import java.util.Optional;
import quietband.model.Design;
import quietband.model.Requirement;

/**
 * A cancellation filter that is wanted.
 *
 * @param design   what it is for, with its errors; its own filter is replaced
 * @param form     taps or sections
 * @param count    taps, or sections, of each of the three filters; at least 1
 * @param goal     what counts
 * @param maxGain  largest gain from 0 Hz to half the sample rate, as a ratio, above 0
 * @param grid     rising frequencies of the goal {@code FLAT}, Hz
 * @param measured sensor-to-frequency response to design with in place of the model's; empty for the model's
 */
public record FilterTask(Design design, FilterForm form, int count, FilterGoal goal, double maxGain, double[] grid,
                         Optional<MeasuredPath> measured) {

    /** Lower and upper end of what the goal looks at, Hz: the requirement's band, with the jitter's where noise counts. */
    public double[] ends() {
        Requirement r = design.requirement();
        double[] ends = {r.fromHz(), r.toHz()};
        r.jitter().filter(j -> goal == FilterGoal.NOISE).ifPresent(j -> {
            ends[0] = Math.min(ends[0], j.fromHz());
            ends[1] = Math.max(ends[1], j.toHz());
        });
        return ends;
    }

    /** The path to design with: the measured one, else the model's. */
    public PathResponse path() {
        return measured.<PathResponse>map(m -> m).orElseGet(() -> PathResponse.of(design));
    }
}
