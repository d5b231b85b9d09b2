package quietband.model;

import java.util.List;
import java.util.Optional;

/**
 * The design as written, checked, in SI units.
 *
 * @param title        free text; empty when not given
 * @param oscillator   always there
 * @param platform     empty when bolted down
 * @param cancellation empty when there is no correction
 * @param vibration    environment; {@link Vibration#NONE} when not given
 * @param requirement  what is asked; {@link Requirement#NONE} when not given
 * @param tolerances   scatter between units
 * @param correlations between tolerances
 * @param conditions   named corners
 * @param quantities   every number of the design by path; the records above are built from it
 */
public record Design(String title, Oscillator oscillator, Optional<Platform> platform,
                     Optional<Cancellation> cancellation, Vibration vibration, Requirement requirement,
                     List<Tolerance> tolerances, List<Tolerance.Correlation> correlations,
                     List<Tolerance.Condition> conditions, Quantities quantities) {

    public Design {
        tolerances = List.copyOf(tolerances);
        correlations = List.copyOf(correlations);
        conditions = List.copyOf(conditions);
    }

    /** The weights of the correction, 1/g: as written, else the mounted sensitivity. Zero without a correction. */
    public Vec weightsPerG() {
        return cancellation
            .map(c -> c.weightsPerG().orElseGet(() -> oscillator.resonator().mountedSensitivityPerG()))
            .orElse(Vec.ZERO);
    }
}
