package quietband.filter;

import java.util.Optional;
import quietband.model.Design;

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
                         Optional<MeasuredPath> measured) { }
