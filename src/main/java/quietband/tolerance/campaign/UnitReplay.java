package quietband.tolerance.campaign;

import java.util.Locale;
import quietband.model.Design;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.model.quantity.Quantities;
import quietband.tolerance.draw.ImpossibleUnitException;
import quietband.tolerance.judge.MonteCarloPlan;
import quietband.tolerance.kernel.UnitBody;

/** One unit of a Monte Carlo as a model of its own. */
public final class UnitReplay {

    private UnitReplay() { }

    /** The numbers of a unit, counted from 0: those of the first attempt that is possible in every condition. */
    public static Quantities unit(MonteCarloPlan plan, long index) {
        for (int attempt = 0; attempt <= ImpossibleUnitException.MOST_ATTEMPTS; attempt++) {
            Quantities drawn = plan.draw(plan.scatter(), index, attempt);
            if (drawn != null) {
                try {
                    for (int c = 0; c < plan.conditions().size(); c++) {
                        plan.unit(c, drawn).platform().ifPresent(p -> new UnitBody().fill(p, true));
                    }
                    return drawn;
                } catch (ImpossibleUnitException e) {
                    // the next attempt follows
                }
            }
        }
        throw ImpossibleUnitException.hopeless();
    }

    /** The model with a unit's numbers; where the cancellation is calibrated to the design its weights are written out. */
    public static ModelFile model(ModelFile file, MonteCarloPlan plan, Quantities unit) {
        Design design = file.design();
        ModelFile changed = file.withQuantities(unit);
        boolean fixed = design.cancellation().filter(c -> !c.calibratedEach() && c.weightsPerG().isEmpty()).isPresent();
        if (!fixed) {
            return changed;
        }
        Vec w = plan.nominal().weightsPerG();
        return changed.withValue("cancellation.weights", String.format(Locale.ROOT, "{x: %s 1/g, y: %s 1/g, z: %s 1/g}",
            plain(w.x()), plain(w.y()), plain(w.z())));
    }

    private static String plain(double v) {
        return Double.toString(v).toLowerCase(Locale.ROOT);
    }
}
