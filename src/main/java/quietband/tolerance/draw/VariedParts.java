package quietband.tolerance.draw;

import java.util.List;
import quietband.model.quantity.NumberSlot;
import quietband.model.quantity.Quantities;

/**
 * What tolerances touch beyond what every unit works out anew: what can be put on top of the shared figures of a block, and
 * what makes every unit need blocks of its own.
 *
 * @param sensor  bandwidth or resonance of the sensors
 * @param support resonance of the blank
 * @param inertia numbers of the inertia matrix
 * @param shared  anything else that the blocks hold: band, limits, vibration, carrier, static noise, filter, port
 */
public record VariedParts(boolean sensor, boolean support, boolean inertia, boolean shared) {

    private static final List<String> OWN = List.of("platform.", "oscillator.resonator.", "cancellation.error.",
        "cancellation.weights", "cancellation.sensor.", "cancellation.path.latency", "cancellation.tuning.slope",
        "cancellation.tuning.noise", "cancellation.tuning.range", "cancellation.tuning.curvature", "vibration.shock",
        "vibration.sustained", "vibration.gravity");

    public static VariedParts of(Quantities quantities, List<DrawnTolerance> entries) {
        boolean sensor = false;
        boolean support = false;
        boolean inertia = false;
        boolean shared = false;
        for (DrawnTolerance e : entries) {
            for (int slot : e.slots()) {
                NumberSlot s = quantities.slot(slot);
                sensor |= s.quantity().startsWith("cancellation.sensor.bandwidth")
                    || s.quantity().startsWith("cancellation.sensor.resonance");
                support |= s.quantity().startsWith("oscillator.resonator.support_resonance");
                inertia |= s.quantity().startsWith("platform.inertia");
                shared |= OWN.stream().noneMatch(s.quantity()::startsWith);
            }
        }
        return new VariedParts(sensor, support, inertia, shared);
    }
}
