package quietband.model;

import java.util.List;
import java.util.Optional;
import quietband.model.quantity.NumberChange;
import quietband.model.quantity.Quantities;

/**
 * The design as written, checked, in SI units.
 *
 * @param title        free text; empty when not given
 * @param oscillator   always there
 * @param platform     empty when bolted down
 * @param cancellation empty when there is no cancellation
 * @param vibration    environment; {@link Vibration#NONE} when not given
 * @param requirement  what is asked; {@link Requirement#NONE} when not given
 * @param tolerances   scatter between units
 * @param correlations between tolerances
 * @param conditions   named
 * @param quantities   every number of the design by path; the blocks above are built from it
 * @param parts        builds them
 */
public record Design(String title, Oscillator oscillator, Optional<Platform> platform,
                     Optional<Cancellation> cancellation, Vibration vibration, Requirement requirement,
                     List<Tolerance> tolerances, List<Tolerance.Correlation> correlations,
                     List<Tolerance.Condition> conditions, Quantities quantities, DesignParts parts) {

    public Design {
        tolerances = List.copyOf(tolerances);
        correlations = List.copyOf(correlations);
        conditions = List.copyOf(conditions);
    }

    /** The design that some numbers make. */
    public static Design of(String title, List<Tolerance> tolerances, List<Tolerance.Correlation> correlations,
                            List<Tolerance.Condition> conditions, Quantities quantities, DesignParts parts) {
        double[] v = quantities.raw();
        return new Design(title, parts.oscillator().apply(v), parts.platform().apply(v), parts.cancellation().apply(v),
            parts.vibration().apply(v), parts.requirement().apply(v), tolerances, correlations, conditions, quantities, parts);
    }

    /**
     * The same design with other numbers. They are not checked: a mass may come out negative. Takes microseconds.
     *
     * @param other of this design's layout, from {@link Quantities#with} of {@link #quantities()}
     */
    public Design with(Quantities other) {
        if (!other.sharesLayout(quantities)) {
            throw new IllegalArgumentException("numbers of another model's layout");
        }
        return of(title, tolerances, correlations, conditions, other, parts);
    }

    /**
     * One unit built to this design, with numbers of its own: like {@link #with}, but where the cancellation is
     * calibrated to the design, default weights are those of the design as written, whatever the unit's sensitivity.
     */
    public Design unit(Quantities drawn) {
        Design unit = with(drawn);
        if (cancellation.isEmpty() || cancellation.get().calibratedEach()) {
            return unit;
        }
        Optional<Vec> fixed = Optional.of(parts.weightsPerG().apply(drawn.raw()));
        return unit.withCancellation(unit.cancellation.map(c -> new Cancellation(false, fixed, c.sensor(), c.path(),
            c.tuning(), c.error())));
    }

    /** The same with another cancellation, or none. */
    public Design withCancellation(Optional<Cancellation> other) {
        return new Design(title, oscillator, platform, other, vibration, requirement, tolerances, correlations,
            conditions, quantities, parts);
    }

    /** The same under some changes, e.g. those of a condition. */
    public Design changed(List<NumberChange> changes) {
        return with(quantities.changed(changes));
    }

    /** The weights of the cancellation, 1/g: as written, else the mounted sensitivity. Zero without a cancellation. */
    public Vec weightsPerG() {
        return cancellation
            .map(c -> c.weightsPerG().orElseGet(() -> oscillator.resonator().mountedSensitivityPerG()))
            .orElse(Vec.ZERO);
    }
}
