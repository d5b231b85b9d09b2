package quietband.model;

/**
 * One resonance per axis.
 *
 * @param frequencyHz resonance frequency in Hz; infinite on an axis that has none
 * @param q           quality factor, above 0; without meaning where the frequency is infinite
 */
public record Resonance(Vec frequencyHz, Vec q) {

    /** No resonance on any axis. */
    public static final Resonance NONE = new Resonance(Vec.all(Double.POSITIVE_INFINITY), Vec.all(1));

    /** Whether an axis (0 to 2) has one. */
    public boolean on(int axis) {
        return Double.isFinite(frequencyHz.get(axis));
    }
}
