package quietband.cli.terminal;

/** Something the user can correct; the message says what was found and what to do. */
public final class InputErrorException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    public InputErrorException(String message) {
        super(message);
    }
}
