package quietband.motion.drive;

import quietband.model.Axis;
import quietband.motion.signal.BlockSignal;
import quietband.motion.signal.GridSinusoid;

/** A cosine along one axis, from grid point 0 on. */
public final class SineDrive implements Drive {

    private final int axis;
    private final double theta;
    private final double peakG;

    /**
     * A cosine.
     *
     * @param theta angle per step, rad
     * @param peakG peak acceleration, g
     */
    public SineDrive(Axis axis, double theta, double peakG) {
        this.axis = axis.ordinal();
        this.theta = theta;
        this.peakG = peakG;
    }

    @Override
    public boolean[] used() {
        boolean[] used = new boolean[3];
        used[axis] = true;
        return used;
    }

    @Override
    public void fill(long step, int n, BlockSignal[] axes) {
        double c1 = Math.cos(theta);
        double s1 = Math.sin(theta);
        double angle = Math.IEEEremainder(theta * step, 2 * Math.PI);
        double c = peakG * Math.cos(angle);
        double s = peakG * Math.sin(angle);
        for (int k = 0; k <= n; k++) {
            axes[axis].value[k] = c;
            axes[axis].slope[k] = -theta * s;
            double next = c * c1 - s * s1;
            s = s * c1 + c * s1;
            c = next;
        }
    }

    /** As phasors, for the periodic state. */
    public GridSinusoid[] phasors() {
        GridSinusoid[] p = {GridSinusoid.ZERO, GridSinusoid.ZERO, GridSinusoid.ZERO};
        p[axis] = GridSinusoid.cosine(peakG, theta);
        return p;
    }
}
