package quietband.response.verdict;

import java.util.List;
import quietband.demand.ResidualPoint;
import quietband.model.Stack;

/**
 * Where a stack meets the residual limit and where it is worst.
 *
 * @param stack      which
 * @param worst      the point with the least margin (without a limit: the largest residual)
 * @param asked      whether there is a limit
 * @param share      share of the band within the limit, on a logarithmic frequency scale, 0 to 1; NaN without a limit
 * @param intervals  rising pairs of edges within the limit, Hz
 * @param gaps       the rest of the band
 */
public record StackVerdict(Stack stack, ResidualPoint worst, boolean asked, double share, List<double[]> intervals,
                           List<double[]> gaps) {

    public StackVerdict {
        intervals = List.copyOf(intervals);
        gaps = List.copyOf(gaps);
    }
}
