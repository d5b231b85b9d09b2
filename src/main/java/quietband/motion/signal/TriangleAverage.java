package quietband.motion.signal;

/**
 * Weights of a decaying exponential under the two halves of a triangle as wide as two steps: what an average over
 * the neighbourhood of a grid point takes from the interval before and after it. The triangle's own spectrum, sinc^2, keeps the
 * images of a staircase whose steps are on the grid from folding back into the band.
 */
public final class TriangleAverage {

    /** Integral of s exp(-lambda s) over 0..1: what an interval gives to the point at its end. */
    public final double rising1;
    public final double rising2;
    /** Integral of (1 - s) exp(-lambda s): what it gives to the point at its start. */
    public final double falling1;
    public final double falling2;

    /** For a rate times the step; the second of each is for twice the rate. */
    public TriangleAverage(double lambda) {
        rising1 = rising(lambda);
        rising2 = rising(2 * lambda);
        falling1 = whole(lambda) - rising1;
        falling2 = whole(2 * lambda) - rising2;
    }

    private static double whole(double a) {
        return Double.isInfinite(a) ? 0 : a < 1e-6 ? 1 - a / 2 : -Math.expm1(-a) / a;
    }

    private static double rising(double a) {
        if (Double.isInfinite(a)) {
            return 0;
        }
        return a < 1e-3 ? 0.5 - a / 3 + a * a / 8 - a * a * a / 30 : (1 - Math.exp(-a) * (1 + a)) / (a * a);
    }

    /** The same average of a cubic signal at point k of a block, 0 < k < its end. */
    public static double of(double before, double here, double after, double slopeBefore, double slopeAfter) {
        return 0.15 * (before + after) + 0.7 * here + (slopeBefore - slopeAfter) / 30;
    }
}
