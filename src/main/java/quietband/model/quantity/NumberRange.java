package quietband.model.quantity;

import quietband.units.Amounts;
import quietband.units.Dimension;

/**
 * Which values of a number make sense, in the base unit of its dimension.
 *
 * @param low     smallest value
 * @param open    whether the smallest value itself is refused
 * @param high    largest value, accepted
 * @param whole   whether only whole numbers are accepted
 */
public record NumberRange(double low, boolean open, double high, boolean whole) {

    public static final NumberRange ANY = new NumberRange(Double.NEGATIVE_INFINITY, true, Double.POSITIVE_INFINITY, false);
    public static final NumberRange POSITIVE = new NumberRange(0, true, Double.POSITIVE_INFINITY, false);
    public static final NumberRange NOT_NEGATIVE = new NumberRange(0, false, Double.POSITIVE_INFINITY, false);

    public static NumberRange whole(int low, int high) {
        return new NumberRange(low, false, high, true);
    }

    public static NumberRange between(double low, double high) {
        return new NumberRange(low, false, high, false);
    }

    /** Whether a value makes sense. */
    public boolean holds(double value) {
        boolean above = open ? value > low : value >= low;
        return above && value <= high && (!whole || value == Math.rint(value));
    }

    /** "must be above 0", "must be a whole number from 1 to 20". */
    public String words(Dimension dimension) {
        String text = whole ? "must be a whole number" : "must be";
        if (Double.isFinite(high) && Double.isFinite(low)) {
            text += open ? " above " + show(low, dimension) + " and at most " + show(high, dimension)
                : " from " + show(low, dimension) + " to " + show(high, dimension);
        } else if (Double.isFinite(low)) {
            text += (open ? " above " : " at least ") + show(low, dimension);
        }
        return text;
    }

    private static String show(double value, Dimension dimension) {
        return value == 0 ? "0" : Amounts.print(value, dimension);
    }
}
