package quietband.study.filter;

import java.util.List;
import quietband.filter.FilteredResidual;
import quietband.filter.MeasuredPath;
import quietband.model.Design;
import quietband.model.DigitalFilter;

/** The fullest stack's residual by a path that the model does not hold, before and after a design. */
public record ResidualChange(FilteredResidual before, FilteredResidual after) {

    /** With the measured response a filter was designed for. */
    static ResidualChange of(Design design, MeasuredPath path, List<DigitalFilter> filters) {
        return new ResidualChange(FilteredResidual.of(design, path, design.cancellation().orElseThrow().path().filters()),
            FilteredResidual.of(design, path, filters));
    }
}
