package quietband.response.verdict;

import java.util.ArrayList;
import java.util.List;
import quietband.demand.Decibels;
import quietband.demand.ResidualLimit;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
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
    private final ResidualLimit limit;
    private final List<Stack> stacks;
    private final boolean vector;
    private final int curves;

    Coverage(Design design, ResidualResponse response) {
        this.design = design;
        this.response = response;
        this.limit = new ResidualLimit(design);
        this.stacks = Stack.of(design);
        this.vector = design.requirement().byVector();
        this.curves = vector ? 1 : 3;
    }

    /** How many curves there are: one per stack and axis, or one per stack by vector. */
    int count() {
        return stacks.size() * curves;
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
        double[] limits = limits(f);
        for (int s = 0; s < stacks.size(); s++) {
            double[] y = magnitudes(stacks.get(s), f);
            for (int k = 0; k < curves; k++) {
                over[s * curves + k] = Decibels.over(y[k], limits[k]);
            }
        }
    }

    private double[] limits(double f) {
        if (!limit.asked()) {
            double scale = Math.max(response.scale(), Double.MIN_NORMAL);
            return vector ? new double[] {scale} : new double[] {scale, scale, scale};
        }
        return vector ? new double[] {limit.vector(f)}
            : new double[] {limit.at(Axis.X, f), limit.at(Axis.Y, f), limit.at(Axis.Z, f)};
    }

    private double[] magnitudes(Stack stack, double f) {
        double[] re = new double[3];
        double[] im = new double[3];
        response.at(f);
        response.residual(stack, re, im);
        double[] y = {StrictMath.hypot(re[0], im[0]), StrictMath.hypot(re[1], im[1]), StrictMath.hypot(re[2], im[2])};
        return vector ? new double[] {Math.sqrt(y[0] * y[0] + y[1] * y[1] + y[2] * y[2])} : y;
    }

    private StackVerdict verdict(AdaptiveCurves sweep, int s) {
        int worst = 0;
        AdaptiveCurves.Extremum top = null;
        for (int k = 0; k < curves; k++) {
            AdaptiveCurves.Extremum e = sweep.maximum(s * curves + k);
            if (top == null || e.value() > top.value()) {
                top = e;
                worst = k;
            }
        }
        double f = top.frequencyHz();
        double y = magnitudes(stacks.get(s), f)[worst];
        double line = limit.asked() ? limits(f)[worst] : Double.POSITIVE_INFINITY;
        double margin = limit.asked() ? Decibels.margin(y, line) : Double.NaN;
        String axis = vector ? "vector" : Axis.ALL.get(worst).letter();
        StackVerdict.Worst point = new StackVerdict.Worst(f, axis, y, line, margin);
        if (!limit.asked()) {
            return new StackVerdict(stacks.get(s), point, false, Double.NaN, List.of(), List.of());
        }
        int first = s * curves;
        List<double[]> inside = sweep.within((freq, v) -> {
            double most = v[first];
            for (int k = 1; k < curves; k++) {
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
