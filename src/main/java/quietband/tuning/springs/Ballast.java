package quietband.tuning.springs;

import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Vec;
import quietband.platform.Assembly;
import quietband.platform.AxisFrequencies;

/** Mass that brings natural frequencies down to where they are wanted. */
final class Ballast {

    private static final double STEP = 1e-4;
    private static final double CLOSE = 0.01;

    private Ballast() { }

    /**
     * The mass at the centre of gravity, kg in steps of a tenth of a gram, with which no natural frequency is off by more than
     * needed; 0 where they are within 1 % or too low already, or the mass limit leaves no room.
     */
    static double closing(Design design, Vec wanted) {
        Vec now = AxisFrequencies.hz(new Assembly(design.platform().orElseThrow()));
        boolean close = Axis.ALL.stream().allMatch(a -> Math.abs(now.get(a) / wanted.get(a) - 1) <= 0.9 * CLOSE);
        return close ? 0 : nearest(design, wanted);
    }

    /**
     * The mass at the centre of gravity that leaves the largest relative error of a natural frequency smallest, kg; 0
     * where they are too low.
     */
    static double nearest(Design design, Vec wanted) {
        Platform p = design.platform().orElseThrow();
        Vec now = AxisFrequencies.hz(new Assembly(p));
        double high = Double.NEGATIVE_INFINITY;
        double low = Double.POSITIVE_INFINITY;
        for (Axis a : Axis.ALL) {
            double ratio = StrictMath.log(now.get(a) / wanted.get(a));
            high = Math.max(high, ratio);
            low = Math.min(low, ratio);
        }
        if (high + low <= 0) {
            return 0;
        }
        // natural frequencies go with one over the root of the mass
        double mass = p.mass() * (StrictMath.exp(high + low) - 1);
        double room = Math.max(0, p.massLimit() - p.mass());
        return Math.floor(Math.min(mass, room) / STEP + 0.5) * STEP;
    }
}
