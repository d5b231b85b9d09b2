package quietband.tolerance.draw;

import quietband.model.Tolerance;
import quietband.numerics.NormalCurve;

/**
 * The distribution of one drawn value, as a map from a standard normal to the value, so that correlated normals give
 * correlated values of any distribution.
 *
 * <p>normal: v z. truncated: the normal of standard deviation v (before it is cut) kept between minus and plus the limit. uniform:
 * from -v to v. triangular: from -v to v with its peak at 0. lognormal: a factor exp(s z) whose median is 1 and whose
 * standard deviation is v, so that e^{s^2} (e^{s^2} - 1) = v^2; the drawn value is that factor less 1. (For {@code add} v is
 * first divided by the quantity's nominal value: the quantity itself is then lognormal with its nominal as median.)
 *
 * @param distribution of the drawn value
 * @param value  v
 * @param limit  of a truncated distribution
 * @param spread s of a lognormal distribution; below: share of a normal below minus the limit, of a truncated one
 */
record DrawDistribution(Tolerance.Distribution distribution, double value, double limit, double spread, double below) {

    static DrawDistribution of(Tolerance.Distribution distribution, double value, double limit) {
        double spread = Math.sqrt(StrictMath.log((1 + Math.sqrt(1 + 4 * value * value)) / 2));
        double below = value > 0 ? NormalCurve.below(-limit / value) : 0;
        return new DrawDistribution(distribution, value, limit, spread, below);
    }

    /** The same with half the value; limits stay. */
    DrawDistribution halved() {
        return of(distribution, value / 2, limit);
    }

    /** The drawn value for a standard normal. */
    double at(double z) {
        if (value == 0) {
            return 0;
        }
        return switch (distribution) {
            case NORMAL -> value * z;
            case LOGNORMAL -> StrictMath.expm1(spread * z);
            case TRUNCATED -> truncated(z);
            case UNIFORM -> value * (1 - 2 * NormalCurve.below(-z));
            case TRIANGULAR -> triangular(NormalCurve.below(-Math.abs(z)), z);
        };
    }

    private double truncated(double z) {
        // from the nearer tail, so that no digits are lost there
        double tail = below + NormalCurve.below(-Math.abs(z)) * (1 - 2 * below);
        double x = -value * NormalCurve.quantile(tail);
        double kept = Math.min(limit, x);
        return z < 0 ? -kept : kept;
    }

    private double triangular(double tail, double z) {
        double x = value * (1 - Math.sqrt(2 * tail));
        return z < 0 ? -x : x;
    }
}
