package quietband.motion.drive;

import quietband.motion.signal.BlockSignal;

/** A housing at rest. */
final class RestDrive implements Drive {

    @Override
    public boolean[] used() {
        return new boolean[3];
    }

    @Override
    public void fill(long step, int n, BlockSignal[] axes) {
        for (BlockSignal s : axes) {
            java.util.Arrays.fill(s.value, 0, n + 1, 0);
            java.util.Arrays.fill(s.slope, 0, n + 1, 0);
        }
    }
}
