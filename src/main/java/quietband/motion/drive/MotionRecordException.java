package quietband.motion.drive;

/** A record of motion that cannot be used; the message says where, what was found and what to do. */
public final class MotionRecordException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    MotionRecordException(String message) {
        super(message);
    }
}
