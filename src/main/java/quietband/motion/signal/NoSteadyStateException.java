package quietband.motion.signal;

/** An undamped resonance driven at its own frequency: the motion grows for ever and has no periodic state. */
public final class NoSteadyStateException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    NoSteadyStateException() {
        super("an undamped resonance is driven at its own frequency: there is no periodic state; add damping or move the "
            + "frequency");
    }
}
