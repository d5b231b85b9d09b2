package quietband.motion.signal;

/**
 * A block of a continuous signal: values and slopes at the points of the time grid, point 0 being the block's start. Between
 * two points it is the cubic through both values and both slopes (Hermite), which for a sinusoid of theta rad a step is
 * off by theta^4/384 at the most.
 */
public final class BlockSignal {

    /** Steps in a block; a block has one point more. */
    public static final int BLOCK = 256;

    /** At the points. */
    public final double[] value = new double[BLOCK + 1];
    /** Derivative times the step, at the points. */
    public final double[] slope = new double[BLOCK + 1];

    /** As many as asked. */
    public static BlockSignal[] several(int count) {
        BlockSignal[] all = new BlockSignal[count];
        for (int i = 0; i < count; i++) {
            all[i] = new BlockSignal();
        }
        return all;
    }

    /** The cubic between point j and the next at the fraction s of the step, 0 to 1. */
    public double at(int j, double s) {
        double r = 1 - s;
        return value[j] * r * r * (1 + 2 * s) + value[j + 1] * s * s * (3 - 2 * s)
            + slope[j] * s * r * r - slope[j + 1] * s * s * r;
    }

    /** Derivative of that cubic, times the step. */
    public double slopeAt(int j, double s) {
        double r = 1 - s;
        return 6 * s * r * (value[j + 1] - value[j]) + slope[j] * r * (1 - 3 * s) + slope[j + 1] * s * (3 * s - 2);
    }
}
