package quietband.filter.fixedpoint;

import java.util.List;
import quietband.model.DigitalFilter;

/**
 * Three filters found for a task.
 *
 * @param filters       for x, y and z
 * @param norm          root of the sum of |y_j|^2 over three axes and the task's grid, 1/g
 * @param normUnbounded the least such norm that so many coefficients reach without any bound, 1/g; NaN for sections
 * @param value         what was to be least: the norm (1/g), the ratio to the limit, or the integrated noise (rad)
 * @param relaxed       the same with twice the gain allowed; NaN where the bound is not active
 * @param peaks         largest gain of each filter up to half the sample rate
 */
public record FoundFilters(List<DigitalFilter> filters, double norm, double normUnbounded, double value, double relaxed,
                          List<Peak> peaks) {

    public FoundFilters {
        filters = List.copyOf(filters);
        peaks = List.copyOf(peaks);
    }

    /**
     * The largest gain of a filter.
     *
     * @param gain        as a ratio
     * @param frequencyHz where
     */
    public record Peak(double gain, double frequencyHz) { }
}
