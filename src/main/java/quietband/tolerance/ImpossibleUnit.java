package quietband.tolerance;

/** A draw that no body could be built to, such as a negative stiffness: it is drawn again, counted and reported. */
final class ImpossibleUnit extends RuntimeException {

    /** Thrown in the hot path, so without a trace. */
    static final ImpossibleUnit INSTANCE = new ImpossibleUnit();

    private static final long serialVersionUID = 1L;

    private ImpossibleUnit() {
        super("impossible unit", null, false, false);
    }
}
