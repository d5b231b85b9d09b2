package quietband.tuning.cures;

import quietband.units.Dimension;

/**
 * A value of the model file as it is and as it should be.
 *
 * @param of        path, as options and tolerances name it
 * @param dimension of the value, which is in its base unit
 * @param now       as it is
 * @param holds     what would just meet the limit
 */
public record ValueChange(String of, Dimension dimension, double now, double holds) { }
