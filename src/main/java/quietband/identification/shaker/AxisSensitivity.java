package quietband.identification.shaker;

import java.util.List;
import quietband.model.Axis;

/**
 * What the readings say of one axis of one resonator.
 *
 * @param axis        which
 * @param points      sideband readings in the order of the file
 * @param turnOver    2 g tip-over readings worked out; null without any
 * @param meanPerG    sensitivity, 1/g, signed where the sign is known; the mean of the used readings over the fitted support
 *                    response, from tip-over without any; NaN when nothing was usable
 * @param signKnown   whether its sign is known
 * @param sigmaPerG   standard uncertainty of the mean, 1/g; NaN when it cannot be told
 * @param halfPerG    half of its 95 % interval, 1/g; NaN when it cannot be told
 * @param spreadPerG  standard deviation of single readings, 1/g; NaN for fewer than two
 * @param resonances  found, by frequency
 * @param fit         ln G0, then ln f, ln Q, share of each mode; empty without readings; shared, do not modify
 * @param notes       what is odd
 */
public record AxisSensitivity(Axis axis, List<ShakerPoint> points, TipOver turnOver, double meanPerG, boolean signKnown,
                              double sigmaPerG, double halfPerG, double spreadPerG, List<Found> resonances, double[] fit,
                              List<String> notes) {

    public AxisSensitivity {
        points = List.copyOf(points);
        resonances = List.copyOf(resonances);
        notes = List.copyOf(notes);
    }

    /**
     * A resonance.
     *
     * @param frequencyHz  where
     * @param sigmaHz      its standard uncertainty
     * @param q            quality factor; NaN where the readings do not tell it: none lies within the peak, or it is beyond them
     * @param share        1 for the whole blank on its support, less for a mode that moves it partly
     * @param beyond       whether it is above the readings, seen by their rise alone: its Q is then not known
     */
    public record Found(double frequencyHz, double sigmaHz, double q, double share, boolean beyond) { }

    /** The fitted sensitivity at a frequency in Hz, 1/g; NaN without readings. */
    public double fittedAt(double f) {
        return fit.length == 0 ? Double.NaN : StrictMath.exp(fit[0] + ModeFit.logShape(ModeFit.modes(fit), f));
    }

    /** How many readings count. */
    public long used() {
        return points.stream().filter(p -> p.mark() == ShakerPoint.Mark.USED).count();
    }

    /** Whether there is a value. */
    public boolean usable() {
        return !Double.isNaN(meanPerG);
    }
}
