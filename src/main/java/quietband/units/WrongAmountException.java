package quietband.units;

/** A text that is no acceptable amount of the quantity that is due; says what was found and what would do. */
public final class WrongAmountException extends IllegalArgumentException {

    private static final long serialVersionUID = 1;

    private final String found;
    private final String advice;

    WrongAmountException(String found, String advice) {
        super(found + "; " + advice);
        this.found = found;
        this.advice = advice;
    }

    /** What was found, e.g. {@code '12 N/kg' is an acceleration}. */
    public String found() {
        return found;
    }

    /** What would do, e.g. {@code expected a stiffness, e.g. 12 N/mm}. */
    public String advice() {
        return advice;
    }
}
