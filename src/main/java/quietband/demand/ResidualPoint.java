package quietband.demand;

/**
 * A residual sensitivity beside its limit at one frequency.
 *
 * @param frequencyHz  where
 * @param axis         x, y, z or vector
 * @param residualPerG |y|, 1/g
 * @param limitPerG    the limit there, 1/g; infinite where nothing limits it
 * @param marginDb     20 log10(limit/residual), within +-300, negative beyond the limit; NaN when no limit is stated
 */
public record ResidualPoint(double frequencyHz, String axis, double residualPerG, double limitPerG, double marginDb) {

    /** The residual over its limit; NaN when no limit is stated. */
    public double ratio() {
        return Double.isNaN(marginDb) ? Double.NaN : Decibels.ratio(residualPerG, limitPerG);
    }
}
