package quietband.motion.run;

import java.util.List;
import quietband.model.Stack;

/**
 * Where a stack stays within the residual limit, as a sweep finds it.
 *
 * @param stack     which
 * @param asked     whether there is a limit
 * @param intervals rising pairs of edges, Hz
 * @param share     of the band on a logarithmic scale, 0 to 1; NaN without a limit
 * @param worstHz   where residual over limit (without one: the residual) is largest among the frequencies driven
 * @param worstPerG residual there, 1/g
 */
public record SweepCoverage(Stack stack, boolean asked, List<double[]> intervals, double share, double worstHz, double worstPerG) {

    public SweepCoverage {
        intervals = List.copyOf(intervals);
    }
}
