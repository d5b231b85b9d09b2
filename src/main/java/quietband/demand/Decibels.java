package quietband.demand;

/** Ratios of amplitudes and powers in dB, kept within what a table can hold. */
public final class Decibels {

    /** Margins are stated up to this many dB. */
    static final double LARGEST_MARGIN = 300;

    /** Curves are followed down to this many dB below their limit. */
    public static final double FLOOR = -120;

    private Decibels() { }

    /** 20 log10 of value over limit, at least -120 and at most 300 dB; -120 for an infinite limit. */
    public static double over(double value, double limit) {
        if (value <= 0 || Double.isInfinite(limit)) {
            return FLOOR;
        }
        return Math.max(FLOOR, Math.min(LARGEST_MARGIN, 20 * StrictMath.log10(value / limit)));
    }

    /** Margin 20 log10(limit/value), between -300 and 300 dB. */
    public static double margin(double value, double limit) {
        if (value <= 0 || Double.isInfinite(limit)) {
            return LARGEST_MARGIN;
        }
        return clamp(20 * StrictMath.log10(limit / value));
    }

    /** A margin in dB kept between -300 and 300. */
    public static double clamp(double margin) {
        return Math.max(-LARGEST_MARGIN, Math.min(LARGEST_MARGIN, margin));
    }

    /** 10 log10 of a power ratio; minus infinity for 0. */
    public static double ofPower(double power) {
        return 10 * StrictMath.log10(power);
    }
}
