package quietband.filter;

/** A filter that cannot be designed as asked; the message says what was found and what to do. */
public final class FilterException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** With what was found and what to do. */
    public FilterException(String message) {
        super(message);
    }
}
