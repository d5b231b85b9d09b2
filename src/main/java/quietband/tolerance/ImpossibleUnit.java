package quietband.tolerance;

/** A draw that no body could be built to, such as a negative stiffness: it is drawn again, counted and reported. */
final class ImpossibleUnit extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** Thrown in the hot path, so without a trace. */
    ImpossibleUnit() {
        super("impossible unit", null, false, false);
    }
}
