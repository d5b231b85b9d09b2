package quietband.cli;

/** Something the user can mend; the message says what was found and what to do. */
final class Mendable extends RuntimeException {

    private static final long serialVersionUID = 1L;

    Mendable(String message) {
        super(message);
    }
}
