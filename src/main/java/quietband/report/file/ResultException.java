package quietband.report.file;

/** A result that cannot be written where it was asked for; the message says where, what stands there and what to do. */
public final class ResultException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** With a message for the user. */
    public ResultException(String message) {
        super(message);
    }
}
