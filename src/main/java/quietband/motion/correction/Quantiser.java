package quietband.motion.correction;

import quietband.model.Cancellation;

/** The sampler of one axis: steps of q = 2 range/2^bits, nearest level, held within the range. */
final class Quantiser {

    private final double step;
    private final double top;
    private final double bottom;
    private long clipped;

    Quantiser(Cancellation c, int axis, boolean linear) {
        boolean acts = !linear && c.path().sampled() && c.path().converterBits() > 0;
        double range = c.sensor().rangeG().get(axis);
        step = acts ? 2 * range / Math.pow(2, c.path().converterBits()) : 0;
        top = acts ? range - step : Double.POSITIVE_INFINITY;
        bottom = acts ? -range : Double.NEGATIVE_INFINITY;
    }

    /** Replaces accelerations in g by the levels that stand for them. */
    void convert(double[] u, int n) {
        for (int i = 0; step != 0 && i < n; i++) {
            u[i] = convert(u[i]);
        }
    }

    private double convert(double u) {
        double level = step * Math.rint(u / step);
        if (level > top || level < bottom) {
            clipped++;
            return level > top ? top : bottom;
        }
        return level;
    }

    long clipped() {
        return clipped;
    }
}
