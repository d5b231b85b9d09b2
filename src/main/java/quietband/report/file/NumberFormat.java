package quietband.report.file;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Numbers as files show them: twelve significant digits, a point whatever the locale, the same text on every machine.
 */
public final class NumberFormat {

    private static final int SIGNIFICANT = 12;
    static final int LONGEST = 32;
    private static final int MOST_POWER = 308;
    /** Powers of ten of everyday numbers; rarer ones are computed when needed. */
    private static final double[] POWER = new double[48];

    static {
        for (int i = 0; i < POWER.length; i++) {
            POWER[i] = Double.parseDouble("1e" + i);
        }
    }

    private static final Pattern PLACE = Pattern.compile("%(%|[^a-zA-Z%]*[a-zA-Z])");
    private static final Pattern NEGATIVE_ZERO = Pattern.compile("(?<!\\w)-0(\\.0+)?(?![.\\d])");

    private NumberFormat() { }

    /** Text with values put in as by {@link String#format}, the same in every country; what rounds to zero has no minus sign. */
    public static String text(String format, Object... values) {
        String text = String.format(Locale.ROOT, format, values);
        if (!NEGATIVE_ZERO.matcher(text).find()) {
            return text;
        }
        Object[] signless = values.clone();
        Matcher place = PLACE.matcher(format);
        for (int i = 0; place.find();) {
            if (!place.group().equals("%%")) {
                boolean zero = values[i] instanceof Double
                    && NEGATIVE_ZERO.matcher(String.format(Locale.ROOT, place.group(), values[i])).find();
                signless[i] = zero ? Double.valueOf(0) : values[i];
                i++;
            }
        }
        return String.format(Locale.ROOT, format, signless);
    }

    /** The number with all twelve digits; empty when it is not finite. */
    public static String full(double v) {
        return Double.isFinite(v) ? text(v, false) : "";
    }

    /** The number without trailing zeros, for JSON; {@code null} when it is not finite. */
    public static String json(double v) {
        return Double.isFinite(v) ? text(v, true) : "null";
    }

    private static String text(double v, boolean trimmed) {
        char[] chars = new char[LONGEST];
        return new String(chars, 0, write(chars, 0, v, trimmed));
    }

    /** Appends a number of moderate size rounded to one decimal. */
    public static void tenths(StringBuilder text, double v) {
        long tenths = Math.round(v * 10);
        text.append(tenths < 0 ? "-" : "").append(Math.abs(tenths) / 10).append('.').append((char) ('0' + Math.abs(tenths) % 10));
    }

    /** Writes a finite number, at most {@link #LONGEST} characters, from a place on; returns the place behind it. */
    static int write(char[] text, int from, double v, boolean trimmed) {
        if (v == 0) {
            text[from] = '0';
            text[from + 1] = '.';
            text[from + 2] = '0';
            return from + (trimmed ? 1 : 3);
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
        int at = from;
        if (v < 0) {
            text[at++] = '-';
        }
        boolean scientific = exponent < -5 || exponent >= SIGNIFICANT;
        at = plain(text, at, digits, scientific ? 0 : exponent, trimmed);
        if (scientific) {
            text[at++] = 'e';
            String power = Integer.toString(exponent);
            power.getChars(0, power.length(), text, at);
            at += power.length();
        }
        return at;
    }

    /** Twelve digits with the point behind the one of weight 10^0, which is {@code exponent} places after the first. */
    private static int plain(char[] text, int from, long digits, int exponent, boolean trimmed) {
        int whole = Math.max(1, exponent + 1);
        int zeros = Math.max(0, -exponent);
        int end = from + SIGNIFICANT + zeros + (whole < SIGNIFICANT + zeros ? 1 : 0);
        int point = from + whole;
        // two halves of six digits: int arithmetic is what is fast
        int low = (int) (digits % 1_000_000);
        int high = (int) (digits / 1_000_000);
        int at = end;
        for (int i = 0; i < SIGNIFICANT + zeros; i++) {
            if (--at == point) {
                at--;
            }
            int rest = i < 6 ? low : high;
            text[at] = (char) ('0' + rest % 10);
            if (i < 6) {
                low = rest / 10;
            } else {
                high = rest / 10;
            }
        }
        if (point < end) {
            text[point] = '.';
        }
        int last = end;
        while (trimmed && point < end && last > point + 1 && text[last - 1] == '0') {
            last--;
        }
        return last == point + 1 && point < end ? point : last;
    }

    private static long scaled(double a, int power) {
        if (power >= 0) {
            return Math.round(power <= MOST_POWER ? a * power(power) : a * 1e300 * power(power - 300));
        }
        return Math.round(a / power(-power));
    }

    private static double power(int n) {
        return n < POWER.length ? POWER[n] : Double.parseDouble("1e" + n);
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
            ? String.format(Locale.ROOT, "%." + (significant - 1) + "e", v) : rounded.toPlainString();
    }
}
