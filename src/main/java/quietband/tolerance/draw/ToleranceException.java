package quietband.tolerance.draw;

/** Tolerances that cannot be drawn as written; the message says which and what to do. */
public final class ToleranceException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    public ToleranceException(String message) {
        super(message);
    }
}
