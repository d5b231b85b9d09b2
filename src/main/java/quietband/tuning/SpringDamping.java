package quietband.tuning;

import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Platform.Spring;

/** Damping to go with new rates. */
final class SpringDamping {

    private SpringDamping() { }

    /**
     * Keeps the damping ratios (viscous damping goes with the root of rate and mass, the corner of a relaxing branch
     * with the natural frequency), or sets viscous dampers so that with what the loss factors give a ratio results:
     * {@code c = 2 (z - eta/2 - z_m) k/w}.
     *
     * @param numbers of the design with new rates; modified
     * @param before  the design the rates were scaled from
     */
    static void set(PlatformNumbers numbers, Design before, CornerSolver solved, Optional<Double> wanted) {
        for (Axis a : Axis.ALL) {
            double root = Math.sqrt(solved.factors().get(a));
            numbers.scale("damping", "", a.ordinal(), root);
            numbers.scale("relaxation.corner", "", a.ordinal(), root);
        }
        if (wanted.isEmpty()) {
            return;
        }
        Platform p = solved.design().platform().orElseThrow();
        double modal = before.platform().orElseThrow().modalDamping();
        for (Spring s : p.springs()) {
            for (Axis a : Axis.ALL) {
                double w = 2 * Math.PI * solved.cornerHz().get(a);
                double missing = wanted.get() - s.lossFactor().get(a) / 2 - modal;
                numbers.set("damping", s.group(), a.ordinal(), Math.max(0, 2 * missing * s.stiffness().get(a) / w));
            }
        }
    }
}
