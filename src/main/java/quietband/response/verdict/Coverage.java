package quietband.response.verdict;

import java.util.ArrayList;
import java.util.List;
import quietband.demand.Decibels;
import quietband.demand.ResidualDemand;
import quietband.demand.ResidualPoint;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.response.Effort;
import quietband.response.ResidualResponse;
import quietband.spectrum.AdaptiveCurves;

/** Follows the residual of every stack over the band on the program's own grid and compares it with the limit. */
final class Coverage {

    /** Curves are followed to this many dB between the points of a sweep. */
    static final double FOLLOW_DB = 0.1;

    // a residual that sits on its limit meets it; rounding must not decide
    private static final double TOUCH_DB = 1e-9;

    private final Design design;
    private final ResidualResponse response;
    private final ResidualDemand demand;
    private final Effort effort;
    private final List<Stack> stacks;
    private final int rows;

    Coverage(Design design, ResidualResponse response) {
        this(design, response, Effort.FULL);
    }

    /** A coarse look is at the fullest stack alone, and only where there is a limit. */
    Coverage(Design design, ResidualResponse response, Effort effort) {
        this.design = design;
        this.response = response;
        this.demand = new ResidualDemand(design, Math.max(response.scale(), Double.MIN_NORMAL));
        this.effort = effort;
        this.stacks = effort == Effort.FULL ? Stack.of(design) : demand.asked() ? List.of(Stack.fullest(design)) : List.of();
        this.rows = demand.rows();
    }

    /** How many curves there are: one per stack and axis, or one per stack by vector. */
    int count() {
        return stacks.size() * rows;
    }

    /** One verdict per stack from a sweep of its own. */
    List<StackVerdict> verdicts(double[] grid) {
        return verdicts(AdaptiveCurves.refined(grid, f -> {
            double[] over = new double[count()];
            write(f, over);
            return over;
        }, FOLLOW_DB));
    }

    /** One verdict per stack from a sweep whose first curves are those of {@link #write}. */
    List<StackVerdict> verdicts(AdaptiveCurves sweep) {
        List<StackVerdict> verdicts = new ArrayList<>();
        for (int s = 0; s < stacks.size(); s++) {
            verdicts.add(verdict(sweep, s));
        }
        return verdicts;
    }

    /** Writes dB over the limit (without a limit: over the sensitivity) for each stack's axes or vector, from index 0 on. */
    void write(double f, double[] over) {
        double[] limits = demand.limits(f);
        response.at(f);
        for (int s = 0; s < stacks.size(); s++) {
            double[] squared = response.squares(stacks.get(s));
            for (int row = 0; row < rows; row++) {
                over[s * rows + row] = Decibels.over(demand.perG(row, squared), limits[row]);
            }
        }
    }

    private StackVerdict verdict(AdaptiveCurves sweep, int s) {
        AdaptiveCurves.Highest highest = sweep.highest(s * rows, rows);
        double worstHz = highest.top().frequencyHz();
        response.at(worstHz);
        ResidualPoint point = demand.point(highest.curve(), worstHz, response.squares(stacks.get(s)));
        if (!demand.asked() || effort == Effort.COARSE) {
            return new StackVerdict(stacks.get(s), point, demand.asked(), Double.NaN, List.of(), List.of());
        }
        int first = s * rows;
        List<double[]> inside = sweep.within((freq, v) -> {
            double most = v[first];
            for (int k = 1; k < rows; k++) {
                most = Math.max(most, v[first + k]);
            }
            return most - TOUCH_DB;
        });
        return new StackVerdict(stacks.get(s), point, true, share(inside), inside, gaps(inside));
    }

    private double share(List<double[]> inside) {
        double sum = 0;
        for (double[] i : inside) {
            sum += StrictMath.log(i[1] / i[0]);
        }
        return sum / StrictMath.log(design.requirement().toHz() / design.requirement().fromHz());
    }

    private List<double[]> gaps(List<double[]> inside) {
        List<double[]> gaps = new ArrayList<>();
        double from = design.requirement().fromHz();
        for (double[] i : inside) {
            if (i[0] > from) {
                gaps.add(new double[] {from, i[0]});
            }
            from = i[1];
        }
        if (from < design.requirement().toHz()) {
            gaps.add(new double[] {from, design.requirement().toHz()});
        }
        return gaps;
    }
}
