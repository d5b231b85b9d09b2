package quietband.tolerance.draw;

/** A draw that no body could be built to, such as a negative stiffness: it is drawn again, counted and reported. */
public final class ImpossibleUnitException extends RuntimeException {

    /** Draws allowed for one unit. */
    public static final int MOST_ATTEMPTS = 1000;

    private static final long serialVersionUID = 1L;

    /** Thrown in the hot path, so without a trace. */
    public ImpossibleUnitException() {
        super("impossible unit", null, false, false);
    }

    /** When even the last of the draws that are allowed for one unit is impossible. */
    public static ToleranceException hopeless() {
        return new ToleranceException("the tolerances give an impossible unit " + MOST_ATTEMPTS + " times in a row: make them narrower, "
            + "or choose a distribution that keeps the quantity in its range");
    }
}
