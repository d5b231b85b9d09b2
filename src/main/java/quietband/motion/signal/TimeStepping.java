package quietband.motion.signal;

import java.util.Locale;
import quietband.numerics.ImpossibleRequestException;

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
            boolean muted) {

    private static final double MOST_PER_SECOND = 1e9;
    private static final long MOST_POINTS = 10_000_000_000L;

    /** @throws ImpossibleRequestException when no pass could ever be stepped so finely, or for so long */
    public TimeStepping {
        if (!(1 / step <= MOST_PER_SECOND)) {
            throw new ImpossibleRequestException(String.format(Locale.ROOT,
                "a time grid of %.3g points a second; at most %.3g: lower --time-rate or "
                + "--frequency, or the highest frequency of the model's band and profiles", 1 / step, MOST_PER_SECOND));
        }
        if (points > MOST_POINTS) {
            throw new ImpossibleRequestException(String.format(Locale.ROOT,
                "a pass of %.3g s takes %.3g points of time; at most %.3g: shorten "
                + "--duration, lower --time-rate, or raise --rate or the band's lowest frequency", (double) points * step,
                (double) points, (double) MOST_POINTS));
        }
    }
}
