package quietband.motion;

import java.util.List;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.DigitalFilter;

/** A digital filter whose own response grows: it has no steady state in time. */
public final class UnstableFilterException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private UnstableFilterException(String message) {
        super(message);
    }

    /** Checks every section in use: poles inside the unit circle, |a2| < 1 and |a1| < 1 + a2. */
    static void check(Design design) {
        List<DigitalFilter> filters = design.cancellation().map(c -> c.path().filters()).orElse(List.of());
        for (int i = 0; i < filters.size(); i++) {
            if (!new DigitalRun(filters.get(i)).stable()) {
                throw new UnstableFilterException("the digital filter of axis " + Axis.ALL.get(i).letter()
                    + " has a section that does not die away (its poles must lie inside the unit circle, |a2| < 1 and "
                    + "|a1| < 1 + a2): it cannot run in time");
            }
        }
    }
}
