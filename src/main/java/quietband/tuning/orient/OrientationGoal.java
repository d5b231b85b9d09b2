package quietband.tuning.orient;

import quietband.model.Vec;

/** What a turn of the resonator is judged by: the less, the better. */
@FunctionalInterface
interface OrientationGoal {

    /**
     * The figure for a mounted vector.
     *
     * @param g       mounted sensitivity, 1/g
     * @param weights of the cancellation, 1/g; of no meaning without one
     * @param enough  as soon as the figure is known to exceed this, any figure above it may be returned
     */
    double of(Vec g, Vec weights, double enough);

    /** The figure itself. */
    default double of(Vec g, Vec weights) {
        return of(g, weights, Double.POSITIVE_INFINITY);
    }
}
