package quietband.response;

/** How closely a design is looked at: the same formulas on one grid or another. */
public enum Effort {

    /** Every resonance, curves followed to 0.1 dB, integrals to 1e-7, the shock for 12 periods. */
    FULL(100),

    /**
     * For searches, 40 points per decade and seven in each mode, trapezoids, the first two periods after a shock, the fullest stack
     * only: the residual within some hundredths of a dB, integrals within 1 %, without warnings.
     */
    COARSE(40);

    private final int perDecade;

    Effort(int perDecade) {
        this.perDecade = perDecade;
    }

    /** Points in each decade of a grid's base. */
    int perDecade() {
        return perDecade;
    }
}
