package quietband.tuning.springs;

import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Platform;
import quietband.model.Platform.Spring;
import quietband.model.Vec;
import quietband.tuning.parts.PlatformNumbers;

/** Damping to go with new rates. */
final class SpringDamping {

    private SpringDamping() { }

    /**
     * Keeps the damping ratios (viscous damping goes with the root of the rate, the corner of a relaxing branch with the natural
     * frequency), or sets ratios that are wanted.
     *
     * @param numbers of the design with new rates; modified
     */
    static void set(PlatformNumbers numbers, NaturalFrequencySolver solved, Optional<Vec> wanted) {
        for (Axis a : Axis.ALL) {
            double root = Math.sqrt(solved.factors().get(a));
            numbers.scale("damping", "", a.ordinal(), root);
            numbers.scale("relaxation.corner", "", a.ordinal(), root);
        }
        wanted.ifPresent(z -> ratio(numbers, solved.cornerHz(), z));
    }

    /**
     * Sets viscous dampers so that with what the loss factors give a damping ratio results:
     * {@code c = 2 (z - eta/2 - z_m) k/w}, at least 0.
     *
     * @param numbers  modified
     * @param cornerHz of the axes, Hz
     * @param wanted   damping ratio by axis
     */
    static void ratio(PlatformNumbers numbers, Vec cornerHz, Vec wanted) {
        Platform p = numbers.design().platform().orElseThrow();
        for (Spring s : p.springs()) {
            for (Axis a : Axis.ALL) {
                double w = 2 * Math.PI * cornerHz.get(a);
                double missing = wanted.get(a) - s.lossFactor().get(a) / 2 - p.modalDamping();
                numbers.set("damping", s.group(), a.ordinal(), Math.max(0, 2 * missing * s.stiffness().get(a) / w));
            }
        }
    }
}
