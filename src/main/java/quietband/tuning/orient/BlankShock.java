package quietband.tuning.orient;

import java.util.List;
import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.model.Vibration.Shock;
import quietband.motion.run.VibrationRun;

/**
 * What the blank sees of a model's shock on its support, by stepping through time: the pulse along each driven axis.
 *
 * @param bolted peak acceleration of the blank along the axis, bolted down, g; the largest over the axes
 * @param sprung the same on the platform; NaN without one
 */
public record BlankShock(double bolted, double sprung) {

    private static final double UNIT = 1e-9;
    private static final int ROWS = 2000;

    /** Works it out; empty for a model without a shock. */
    public static Optional<BlankShock> of(Design design) {
        Optional<Shock> shock = design.vibration().shock();
        if (shock.isEmpty()) {
            return Optional.empty();
        }
        double bolted = 0;
        double sprung = Double.NaN;
        for (Axis axis : design.vibration().axes()) {
            BlankShock one = along(design, axis, shock.get());
            bolted = Math.max(bolted, one.bolted);
            sprung = Double.isNaN(sprung) ? one.sprung : Math.max(sprung, one.sprung);
        }
        return Optional.of(new BlankShock(bolted, sprung));
    }

    /** Works it out for a pulse along one axis. */
    public static BlankShock along(Design design, Axis axis, Shock shock) {
        // a sensitivity of 1 along the axis alone makes the fractional frequency the blank's acceleration in g
        Design one = OrientedResidual.with(design.withCancellation(Optional.empty()), Vec.ZERO.with(axis, UNIT), Vec.ZERO);
        VibrationRun.Result ride = VibrationRun.shock(one, axis, shock, new VibrationRun.Options(true, 0, false, ROWS, 0), share -> true);
        List<Stack> stacks = ride.stacks();
        return new BlankShock(ride.peak()[stacks.indexOf(Stack.BARE)] / UNIT,
            stacks.contains(Stack.ISOLATED) ? ride.peak()[stacks.indexOf(Stack.ISOLATED)] / UNIT : Double.NaN);
    }
}
