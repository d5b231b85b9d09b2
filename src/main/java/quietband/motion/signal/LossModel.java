package quietband.motion.signal;

/**
 * How a loss factor acts in time.
 *
 * @param omega rad/s at which it is the damper eta k/omega, exact there; 0 for the passive fit
 * @param topHz upper end of the band that counts, Hz
 */
public record LossModel(double omega, double topHz) {

    /** Exact at one frequency in Hz. */
    public static LossModel at(double frequencyHz) {
        return new LossModel(2 * Math.PI * frequencyHz, frequencyHz);
    }

    /** The passive fit up to a frequency in Hz. */
    public static LossModel fit(double topHz) {
        return new LossModel(0, topHz);
    }

    public boolean single() {
        return omega > 0;
    }
}
