package quietband.identification;

/** A measurement that cannot be fitted as asked; the message says where, what was found and what to do. */
public final class FitException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    public FitException(String message) {
        super(message);
    }
}
