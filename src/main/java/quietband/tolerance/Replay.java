package quietband.tolerance;

import java.util.Locale;
import quietband.model.Design;
import quietband.model.ModelFile;
import quietband.model.Quantities;
import quietband.model.Vec;

/** One unit of a Monte Carlo as a model of its own. */
public final class Replay {

    private Replay() { }

    /** The numbers of a unit, counted from 0: those of the first attempt that is possible in every condition. */
    public static Quantities unit(Plan plan, long index) {
        for (int attempt = 0; attempt <= Campaign.MOST_ATTEMPTS; attempt++) {
            Quantities drawn = plan.draw(plan.scatter(), index, attempt);
            if (drawn != null) {
                try {
                    for (int c = 0; c < plan.conditions().size(); c++) {
                        plan.unit(c, drawn).platform().ifPresent(p -> new UnitBody().fill(p, true));
                    }
                    return drawn;
                } catch (ImpossibleUnit e) {
                    // the next attempt follows
                }
            }
        }
        throw Campaign.hopeless();
    }

    /** The model with a unit's numbers; where the correction is calibrated to the design its weights are written out. */
    public static ModelFile model(ModelFile file, Plan plan, Quantities unit) {
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
