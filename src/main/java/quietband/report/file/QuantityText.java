package quietband.report.file;

import java.util.List;
import quietband.units.Amounts;
import quietband.units.Dimension;
import quietband.units.Unit;

/** Numbers as people read them: few digits, the unit that suits. */
public final class QuantityText {

    private static final int DIGITS = 4;
    private static final double ROUNDING = 1e-12;

    private QuantityText() { }

    /** A frequency in Hz. */
    public static String hz(double f) {
        return f >= 999.5 ? plain(f / 1000) + " kHz" : plain(f) + " Hz";
    }

    private static String plain(double value) {
        String number = NumberFormat.brief(value, DIGITS);
        return number.contains(".") && !number.contains("e") ? number.replaceAll("\\.?0+$", "") : number;
    }

    /** "1 piece", "2 pieces". */
    public static String count(long n, String what) {
        return n + " " + (n == 1 ? what : what.endsWith("y") ? what.substring(0, what.length() - 1) + "ies" : what + "s");
    }

    /** A stretch of frequencies in Hz; each end has its unit where they differ. */
    public static String range(double from, double to) {
        String upper = hz(to);
        String lower = hz(from);
        boolean same = lower.endsWith(" kHz") == upper.endsWith(" kHz");
        return (same ? lower.substring(0, lower.lastIndexOf(' ')) : lower) + " to " + upper;
    }

    /** Stretches of frequencies in Hz, or what is said when there is none. */
    public static String ranges(List<double[]> pairs, String none) {
        return pairs.isEmpty() ? none : String.join(", ", pairs.stream().map(p -> range(p[0], p[1])).toList());
    }

    /** A sensitivity in 1/g. */
    public static String ppb(double perG) {
        return plain(perG * 1e9);
    }

    /** Decibels with two places; a margin beyond 299 dB is said so. */
    public static String db(double v) {
        return Math.abs(v) >= 299 ? (v < 0 ? "below -299 dB" : "over 299 dB") : NumberFormat.text("%.2f dB", v);
    }

    /** A value of a base unit in the unit in which another of its kind is easiest to read. */
    public static String amount(double value, double like, Dimension dimension, int digits) {
        Unit best = dimension.plain();
        double least = Double.MAX_VALUE;
        for (Unit unit : dimension.units()) {
            double size = StrictMath.log10(Math.abs(unit.roughly(like == 0 ? value : like)));
            double cost = size < -ROUNDING ? -size : Math.max(0, size - 2.999);
            if (cost < least) {
                least = cost;
                best = unit;
            }
        }
        String number = NumberFormat.brief(in(value, best), digits);
        String plain = number.contains(".") && !number.contains("e") ? number.replaceAll("\\.?0+$", "") : number;
        return best.text().isEmpty() ? plain : plain + " " + best.text();
    }

    /** The number of a unit that a finite value in the base unit is, with the fewest digits that give the value back. */
    public static double in(double value, Unit unit) {
        String text = Amounts.print(value, unit);
        int space = text.indexOf(' ');
        return Double.parseDouble(space < 0 ? text : text.substring(0, space));
    }
}
