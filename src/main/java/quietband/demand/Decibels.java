package quietband.demand;

/** Ratios of amplitudes and powers in dB, kept within what a table can hold. */
public final class Decibels {

    /** Ratios and margins are stated up to this many dB. */
    public static final double LARGEST = 300;

    /** Curves are followed down to this many dB below their limit. */
    public static final double FLOOR = -120;

    private Decibels() { }

    /** Value over limit: 0 for a value of 0 whatever the limit, else infinite for a limit of 0. */
    public static double ratio(double value, double limit) {
        return value == 0 ? 0 : value / limit;
    }

    /** 20 log10 of a ratio of amplitudes, within +-300 dB; 300 for NaN: what cannot be computed meets no limit. */
    public static double ofRatio(double ratio) {
        return Double.isNaN(ratio) ? LARGEST : clamp(20 * StrictMath.log10(ratio));
    }

    /** 20 log10 of value over limit, at least -120 and at most 300 dB; -120 for an infinite limit. */
    public static double over(double value, double limit) {
        return Math.max(FLOOR, ofRatio(ratio(value, limit)));
    }

    /** Margin 20 log10(limit/value), between -300 and 300 dB. */
    public static double margin(double value, double limit) {
        return -ofRatio(ratio(value, limit));
    }

    /** A level in dB kept between -300 and 300. */
    public static double clamp(double db) {
        return Math.max(-LARGEST, Math.min(LARGEST, db));
    }

    /** 10 log10 of a power ratio; minus infinity for 0. */
    public static double ofPower(double power) {
        return 10 * StrictMath.log10(power);
    }

    /** The power ratio of a level, 10^(dB/10). */
    public static double power(double db) {
        return StrictMath.pow(10, db / 10);
    }

    /** The ratio of amplitudes of a level, 10^(dB/20). */
    public static double amplitude(double db) {
        return StrictMath.pow(10, db / 20);
    }
}
