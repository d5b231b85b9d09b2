package quietband.units;

/** Standard gravity: the unit g of an acceleration. */
public final class StandardGravity {

    /** g0 = 9.80665 m/s^2 exactly (3rd CGPM, 1901). */
    public static final double M_PER_S2 = 9.80665;

    private StandardGravity() { }
}
