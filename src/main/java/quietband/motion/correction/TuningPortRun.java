package quietband.motion.correction;

import quietband.model.Cancellation;

/**
 * The oscillator's tuning port behind the hold: a staircase c, limited to the port's range, through one pole, then
 * y = slope (v + curvature v^2/2) with v = c/slope. Between two steps of the staircase everything is an
 * exponential, so that samples, averages and the component at a frequency are exact.
 */
public final class TuningPortRun {

    private final double bend;
    private final double limit;
    private final double pole;
    private double state;
    private long clipped;

    /**
     * For a cancellation.
     *
     * @param linear without limit and curvature
     */
    TuningPortRun(Cancellation c, boolean linear) {
        double slope = c.tuning().slopePerV();
        boolean bends = !linear && slope != 0;
        bend = bends ? c.tuning().curvaturePerV() / (2 * slope) : 0;
        limit = bends ? Math.abs(slope) * c.tuning().rangeV() : Double.POSITIVE_INFINITY;
        pole = 2 * Math.PI * c.tuning().bandwidthHz();
    }

    /** Fractional frequency for a cancellation v (in fractional frequency) at the port. */
    public double bent(double v) {
        return v + bend * v * v;
    }

    /** The cancellation as far as the port's range lets it. */
    double limited(double c) {
        if (Math.abs(c) > limit) {
            clipped++;
            return Math.copySign(limit, c);
        }
        return c;
    }

    /** Value behind the pole now. */
    double state() {
        return state;
    }

    /** Sets the value behind the pole. */
    void state(double v) {
        state = v;
    }

    /** Rate of the pole, 1/s; infinite without one. */
    public double pole() {
        return pole;
    }

    /** What is left of a difference after a time in s. */
    double decay(double time) {
        return Double.isInfinite(pole) ? 0 : Math.exp(-pole * time);
    }

    /** Moves on by a time with the staircase at c; {@code decay} belongs to that time. */
    void advance(double c, double decay) {
        state = c + (state - c) * decay;
    }

    public double bend() {
        return bend;
    }

    long clipped() {
        return clipped;
    }
}
