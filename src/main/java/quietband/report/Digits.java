package quietband.report;

/**
 * Numbers as files show them: twelve significant digits, a point whatever the locale, the same text on every machine.
 */
public final class Digits {

    private static final int SIGNIFICANT = 12;
    private static final double[] POWER = new double[309];

    static {
        for (int i = 0; i < POWER.length; i++) {
            POWER[i] = Double.parseDouble("1e" + i);
        }
    }

    private Digits() { }

    /** The number with all twelve digits; empty when it is not finite. */
    public static String full(double v) {
        return Double.isFinite(v) ? format(v, false) : "";
    }

    /** The number without trailing zeros, for JSON; {@code null} when it is not finite. */
    public static String json(double v) {
        return Double.isFinite(v) ? format(v, true) : "null";
    }

    private static String format(double v, boolean trimmed) {
        if (v == 0) {
            return trimmed ? "0" : "0.0";
        }
        double a = Math.abs(v);
        int exponent = (int) Math.floor(StrictMath.log10(a));
        long digits = scaled(a, SIGNIFICANT - 1 - exponent);
        if (digits < 100_000_000_000L) {
            exponent--;
            digits = scaled(a, SIGNIFICANT - 1 - exponent);
        }
        if (digits >= 1_000_000_000_000L) {
            exponent++;
            digits = scaled(a, SIGNIFICANT - 1 - exponent);
        }
        StringBuilder text = new StringBuilder(24);
        if (v < 0) {
            text.append('-');
        }
        String all = Long.toString(digits);
        if (exponent < -5 || exponent >= SIGNIFICANT) {
            text.append(all.charAt(0));
            fraction(text, all.substring(1), trimmed);
            return text.append('e').append(exponent).toString();
        }
        if (exponent < 0) {
            fraction(text.append('0'), "0".repeat(-exponent - 1) + all, trimmed);
            return text.toString();
        }
        text.append(all, 0, exponent + 1);
        fraction(text, all.substring(exponent + 1), trimmed);
        return text.toString();
    }

    private static void fraction(StringBuilder text, String digits, boolean trimmed) {
        int end = digits.length();
        while (trimmed && end > 0 && digits.charAt(end - 1) == '0') {
            end--;
        }
        if (end > 0) {
            text.append('.').append(digits, 0, end);
        }
    }

    private static long scaled(double a, int power) {
        if (power >= 0) {
            return Math.round(power < POWER.length ? a * POWER[power] : a * 1e300 * POWER[power - 300]);
        }
        return Math.round(a / POWER[-power]);
    }

    /** A number for people: a few significant digits, plain where that is readable. */
    public static String brief(double v, int significant) {
        if (!Double.isFinite(v)) {
            return "-";
        }
        if (v == 0) {
            return "0";
        }
        java.math.BigDecimal rounded = new java.math.BigDecimal(v)
            .round(new java.math.MathContext(significant, java.math.RoundingMode.HALF_EVEN));
        int exponent = rounded.precision() - rounded.scale() - 1;
        return exponent < -5 || exponent > 8
            ? String.format(java.util.Locale.ROOT, "%." + (significant - 1) + "e", v) : rounded.toPlainString();
    }
}
