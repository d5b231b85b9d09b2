package quietband.platform;

import quietband.model.Axis;
import quietband.model.Vec;

/**
 * Natural frequencies by axis: that of an axis is the frequency of the mode that moves mostly along it,
 * the one in whose kinetic energy the displacement along the axis has the largest share.
 */
public final class AxisFrequencies {

    private AxisFrequencies() { }

    /** The natural frequencies of x, y and z, Hz. */
    public static Vec hz(Assembly assembly) {
        Modes modes = assembly.modes();
        return Vec.perAxis(a -> modes.frequencyHz(mode(modes, a)));
    }

    /** The number of the mode, 0 to 5, that moves mostly along an axis. */
    public static int mode(Modes modes, Axis axis) {
        int best = 0;
        double most = -1;
        for (int n = 0; n < 6; n++) {
            double share = modes.energyShares(n)[axis.ordinal()];
            if (share > most * (1 + 1e-9)) {
                most = share;
                best = n;
            }
        }
        return best;
    }

    /**
     * The largest share of other coordinates in the modes of the three axes: 0 when no push along an axis also
     * rotates.
     */
    public static double coupling(Assembly assembly) {
        double most = 0;
        for (Axis axis : Axis.ALL) {
            Modes modes = assembly.modes();
            most = Math.max(most, 1 - modes.energyShares(mode(modes, axis))[axis.ordinal()]);
        }
        return most;
    }
}
