package quietband.identification.search;

import java.util.Set;
import quietband.identification.FitException;
import quietband.model.quantity.NumberRange;
import quietband.model.quantity.NumberSlot;
import quietband.model.quantity.Quantities;
import quietband.units.Dimension;

/**
 * One number to be found: every slot it stands for gets the same. The search works on u, the logarithm of a number that must be
 * above 0, else the number over a natural step.
 *
 * @param of     path
 * @param slots  in the design's quantities
 * @param detail of the first slot
 * @param log    whether u is the logarithm
 * @param step   natural step of a number that may be 0 or negative, in its base unit
 * @param range  which numbers make sense
 * @param start  what the model says
 */
public record FreeValue(String of, int[] slots, NumberSlot detail, boolean log, double step, NumberRange range, double start) {

    private static final Set<Dimension> POSITIVE = Set.of(Dimension.STIFFNESS, Dimension.MASS, Dimension.FREQUENCY);
    private static final double WIDEST = Math.log(1000);

    static FreeValue of(String path, int[] slots, Quantities q) {
        NumberSlot detail = q.slot(slots[0]);
        NumberRange range = q.range(slots[0]);
        double start = q.value(slots[0]);
        if (range.whole()) {
            throw new FitException("--free " + path + ": is a whole number, which no fit can find; set it in the model");
        }
        boolean log = range.low() >= 0 && (range.open() || POSITIVE.contains(detail.dimension()));
        if (log && !(start > 0)) {
            throw new FitException("--free " + path + ": is 0 in the model; write a value above 0 to start from");
        }
        return new FreeValue(path, slots, detail, log, step(detail, start, q), range, start);
    }

    private static double step(NumberSlot slot, double start, Quantities q) {
        return switch (slot.dimension()) {
            case LENGTH -> 1e-3;
            case TIME -> 1e-6;
            case RATIO, ANGLE -> 0.01;
            case SENSITIVITY -> Math.max(Math.abs(start), 1e-10);
            case DAMPING -> Math.max(start, 0.01 * Math.sqrt(number(q, "platform.springs.stiffness") * number(q, "platform.mass")));
            case INERTIA -> 0.02 * number(q, "platform.inertia.xx");
            default -> Math.max(Math.abs(start), 1e-9);
        };
    }

    private static double number(Quantities q, String path) {
        return Math.max(Math.abs(q.valueOf(path)), 1e-12);
    }

    double toU(double value) {
        return log ? Math.log(value) : value / step;
    }

    double toValue(double u) {
        return log ? Math.exp(u) : u * step;
    }

    /** d value / d u. */
    double slope(double u) {
        return log ? Math.exp(u) : step;
    }

    double least() {
        return log ? Math.max(Math.log(start) - WIDEST, range.low() > 0 ? Math.log(range.low()) : Double.NEGATIVE_INFINITY)
            : range.low() / step;
    }

    double most() {
        return log ? Math.min(Math.log(start) + WIDEST, Math.log(range.high())) : range.high() / step;
    }

    /** Whether a number at 0 is at the edge of what makes sense. */
    public boolean floored() {
        return !log && range.low() == 0;
    }
}
