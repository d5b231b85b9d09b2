package quietband.platform;

/** A platform that some direction of motion does not hold: it would have a mode at 0 Hz. */
public final class SingularPlatformException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    SingularPlatformException(String message) {
        super(message);
    }
}
