package quietband.model;

import java.util.List;
import java.util.Optional;
import quietband.model.quantity.NumberChange;

/**
 * One source of scatter between units.
 *
 * @param name         as messages and tables call it
 * @param of           path of the quantity
 * @param kind         how the drawn value acts
 * @param value        one standard deviation (normal, truncated, lognormal) or half width (uniform, triangular): a ratio for
 *                     scale, the quantity's SI unit for add; 0 for a lot
 * @param distribution of the drawn value
 * @param draw         what shares one number
 * @param limit        of a truncated distribution, same unit as the value; infinite for the others
 * @param lot          rows that are drawn whole
 */
public record Tolerance(String name, String of, Kind kind, double value, Distribution distribution, Draw draw, double limit,
                        Optional<Lot> lot) {

    /** How the drawn value acts: multiply by 1 + value, add it, or replace by a row. */
    public enum Kind { SCALE, ADD, LOT }

    /** Distribution of the drawn value. */
    public enum Distribution { NORMAL, TRUNCATED, LOGNORMAL, UNIFORM, TRIANGULAR }

    /** One number per component (every spring, place and axis), per spring with its axes together, or one for all of a unit. */
    public enum Draw { COMPONENT, SPRING, UNIT }

    /** Measured units: serial and sensitivity in 1/g, row by row. */
    public record Lot(String file, List<String> serials, List<Vec> rows) {

        public Lot {
            serials = List.copyOf(serials);
            rows = List.copyOf(rows);
        }
    }

    /** Correlation coefficient of the underlying normals of the named tolerances, pairwise. */
    public record Correlation(List<String> between, double coefficient) {

        public Correlation {
            between = List.copyOf(between);
        }
    }

    /** A condition the design is judged in: changes in order. */
    public record Condition(String name, List<NumberChange> changes) {

        public Condition {
            changes = List.copyOf(changes);
        }
    }
}
