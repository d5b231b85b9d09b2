package quietband.motion;

/** A record of motion that cannot be used; the message says where, what was found and what to do. */
public final class RecordingException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    RecordingException(String message) {
        super(message);
    }
}
