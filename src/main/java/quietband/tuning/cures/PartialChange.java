package quietband.tuning.cures;

/**
 * One number of a design on its way from what it is to what would be ideal.
 *
 * @param slot        its place in the design's quantities
 * @param now         as it is
 * @param ideal       where it ends
 * @param logarithmic moves by equal factors, else by equal steps
 */
record PartialChange(int slot, double now, double ideal, boolean logarithmic) {

    /** The number at a share of the way, 0 to 1. */
    double at(double share) {
        if (share == 0 || now == ideal) {
            return now;
        }
        return logarithmic ? now * StrictMath.pow(ideal / now, share) : now + share * (ideal - now);
    }
}
