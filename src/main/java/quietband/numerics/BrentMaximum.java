package quietband.numerics;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;
import org.hipparchus.optim.univariate.UnivariatePointValuePair;

/** Maximum of a function between two ends without derivatives, by Brent's method; stands kinks. */
public final class BrentMaximum {

    private static final double GOLDEN = (3 - Math.sqrt(5)) / 2;
    private static final int MOST = 500;

    private BrentMaximum() { }

    /** Where and how much. */
    public record Found(double x, double value) { }

    /**
     * The best point met; one of several maxima when there are more.
     *
     * @param near the place is found to about this, in the argument's unit; above 0
     */
    public static Found between(DoubleUnaryOperator f, double from, double to, double near) {
        UnivariatePointValuePair best = new BrentOptimizer(2 * Math.ulp(1.0), near).optimize(new MaxEval(MOST), GoalType.MAXIMIZE,
            new UnivariateObjectiveFunction(f::applyAsDouble), new SearchInterval(from, to, from + GOLDEN * (to - from)));
        return new Found(best.getPoint(), best.getValue());
    }
}
