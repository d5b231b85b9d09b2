package quietband.tolerance;

/** Tolerances that cannot be drawn as written; the message says which and what to do. */
public final class ScatterException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    ScatterException(String message) {
        super(message);
    }
}
