package quietband.motion.signal;

/**
 * How a pass is stepped.
 *
 * @param step      of the time grid, s
 * @param linear    without clipping, quantising, slack, stops and curvature
 * @param loss      what a loss factor is
 * @param averaged  a staircase is averaged over the neighbourhood of each grid point (its steps are then a whole number of grid
 *                  steps), else sampled
 * @param lowestHz  lowest frequency at which a constant phase must be right, Hz
 * @param points   about how many grid points will be taken
 * @param muted     the cancellation gets nothing: content above half the sample rate
 */
public record TimeStepping(double step, boolean linear, LossModel loss, boolean averaged, double lowestHz, long points,
            boolean muted) { }
