package quietband.motion.drive;

import java.util.ArrayList;
import java.util.List;
import quietband.model.Axis;
import quietband.motion.signal.BlockSignal;
import quietband.vibration.Pulse;

/** A shock pulse along one axis after a moment of rest; the ends of its pieces lie on the grid. */
public final class PulseDrive implements Drive {

    private record Stretch(long from, long to, Pulse.Piece piece) { }

    private final int axis;
    private final double step;
    private final List<Stretch> stretches = new ArrayList<>();

    /**
     * A pulse.
     *
     * @param lead steps of rest before it
     */
    public PulseDrive(Pulse pulse, Axis axis, double step, long lead) {
        this.axis = axis.ordinal();
        this.step = step;
        long at = lead;
        for (Pulse.Piece p : pulse.pieces()) {
            long end = at + Math.max(1, Math.round(p.duration() / step));
            stretches.add(new Stretch(at, end, p));
            at = end;
        }
    }

    @Override
    public int smooth(long at, int most) {
        int n = most;
        for (Stretch s : stretches) {
            n = s.from > at ? (int) Math.min(n, s.from - at) : n;
            n = s.to > at ? (int) Math.min(n, s.to - at) : n;
        }
        return n;
    }

    @Override
    public boolean[] used() {
        boolean[] used = new boolean[3];
        used[axis] = true;
        return used;
    }

    @Override
    public void fill(long at, int n, BlockSignal[] axes) {
        BlockSignal s = axes[axis];
        java.util.Arrays.fill(s.value, 0, n + 1, 0);
        java.util.Arrays.fill(s.slope, 0, n + 1, 0);
        for (Stretch stretch : stretches) {
            if (at >= stretch.from && at + n <= stretch.to) {
                // the piece's own duration over as many steps as it has
                double h = stretch.piece.duration() / (stretch.to - stretch.from);
                for (int k = 0; k <= n; k++) {
                    write(s, k, stretch.piece, (at + k - stretch.from) * h);
                }
            }
        }
    }

    private void write(BlockSignal s, int k, Pulse.Piece p, double t) {
        if (p.omega() == 0) {
            s.value[k] = p.startG() + p.slopeG() * t;
            s.slope[k] = p.slopeG() * step;
        } else {
            double c = Math.cos(p.omega() * t);
            double q = Math.sin(p.omega() * t);
            s.value[k] = p.startG() * c + p.slopeG() / p.omega() * q;
            s.slope[k] = step * (p.slopeG() * c - p.startG() * p.omega() * q);
        }
    }

    /** Steps from the start to the end of the pulse. */
    long end() {
        return stretches.get(stretches.size() - 1).to;
    }
}
