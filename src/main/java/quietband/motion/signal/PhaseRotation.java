package quietband.motion.signal;

/** Cosine and sine of a whole number of equal turns, cheap when the number rises by one each time. */
public final class PhaseRotation {

    private static final int FRESH = 256;

    private final double turn;
    private final double c1;
    private final double s1;
    private double c = 1;
    private double s;
    private long at;

    public PhaseRotation(double turn) {
        this.turn = turn;
        c1 = Math.cos(turn);
        s1 = Math.sin(turn);
    }

    /** Goes to k turns. */
    public void to(long k) {
        if (k == at + 1 && k % FRESH != 0) {
            double next = c * c1 - s * s1;
            s = s * c1 + c * s1;
            c = next;
        } else if (k != at || k % FRESH == 0) {
            double angle = Math.IEEEremainder(turn * k, 2 * Math.PI);
            c = Math.cos(angle);
            s = Math.sin(angle);
        }
        at = k;
    }

    public double cos() {
        return c;
    }

    public double sin() {
        return s;
    }
}
