package quietband.tuning.trade;

import quietband.model.quantity.SelectedNumbers;

/**
 * A quantity that is varied between two values.
 *
 * @param what  the numbers a path names, all set to the same value
 * @param from  in the base unit
 * @param to    in the base unit
 * @param steps how many values from one end to the other, at least 2
 */
public record VariedQuantity(SelectedNumbers what, double from, double to, int steps) {

    /** The value at a share of the way, in the base unit. */
    public double at(double share) {
        return share == 1 ? to : from + share * (to - from);
    }

    /** The value of a step, counted from 0. */
    public double value(int step) {
        return at((double) step / (steps - 1));
    }

    /** Where a value lies between the ends, 0 to 1; the nearer end where it is outside. */
    double share(double value) {
        return Math.max(0, Math.min(1, (value - from) / (to - from)));
    }
}
