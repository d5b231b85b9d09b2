package quietband.motion.drive;

import quietband.motion.signal.BlockSignal;

/** Acceleration of the housing in g on the time grid, block by block in order. */
public interface Drive {

    /** How many of at most {@code most} steps from a point on are free of jumps; at least 1. */
    default int smooth(long step, int most) {
        return most;
    }

    /** Which axes move at all. */
    boolean[] used();

    /** Writes n + 1 points from a step on (x, y, z); at a jump, the value of the inner side of the block. */
    void fill(long step, int n, BlockSignal[] axes);
}
