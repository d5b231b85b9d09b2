package quietband.numerics;

/** A target that cannot be worked on at all; the message says why and what it would take. */
public final class ImpossibleRequestException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** With what was found and what would do. */
    public ImpossibleRequestException(String message) {
        super(message);
    }
}
