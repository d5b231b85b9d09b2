package quietband.window;

/** There is nothing to open a window on. */
public final class NoDisplayException extends RuntimeException {

    private static final long serialVersionUID = 1;

    NoDisplayException(String message) {
        super(message);
    }
}
