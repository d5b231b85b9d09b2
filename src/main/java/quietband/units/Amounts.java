package quietband.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads and prints amounts: a number, optional space, a unit of the dimension that is due. */
public final class Amounts {

    /** A decimal number: sign, digits, fraction and exponent, as a regular expression without groups. */
    public static final String NUMBER = "[+-]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][+-]?[0-9]{1,4})?";

    private static final Pattern AMOUNT = Pattern.compile("(" + NUMBER + ")\\s*(.*)");
    private static final int LONGEST = 200;
    private static final int MOST_DIGITS = 22;
    private static final double ROUNDING = 1e-12;

    private Amounts() { }

    /**
     * An amount as read.
     *
     * @param value in the base unit of its dimension, the double nearest to what is written
     * @param unit  as written; empty for a bare zero of a dimension that has units
     */
    public record Amount(double value, Optional<Unit> unit) { }

    /**
     * Reads an amount.
     *
     * @param text      e.g. {@code 12 N/mm}; case of the unit matters
     * @param dimension what is due; decides whether {@code g} is the gram or standard gravity
     * @return the value in the dimension's base unit, rounded once
     * @throws WrongAmountException when it is anything else
     */
    public static double read(String text, Dimension dimension) {
        return amount(text, dimension).value();
    }

    /** Reads an amount and keeps its unit. */
    public static Amount amount(String text, Dimension dimension) {
        String trimmed = text.strip();
        Matcher matcher = AMOUNT.matcher(trimmed);
        if (trimmed.length() > LONGEST || !matcher.matches()) {
            throw UnitSlips.notANumber(trimmed, dimension);
        }
        BigDecimal number = new BigDecimal(matcher.group(1));
        String unitText = matcher.group(2);
        Optional<Unit> unit = dimension.unit(unitText);
        if (unit.isEmpty() && unitText.isEmpty() && number.signum() == 0 && dimension.linear()) {
            return new Amount(0, Optional.empty());
        }
        if (unit.isEmpty()) {
            throw UnitSlips.wrongUnit(matcher.group(1), unitText, dimension);
        }
        double value = unit.get().toBase(number);
        if (Double.isInfinite(value)) {
            throw new WrongAmountException("'" + trimmed + "' is too large", "expected " + UnitSlips.expected(dimension));
        }
        return new Amount(value, unit);
    }

    /**
     * The shortest text that {@link #read} takes back to exactly the same double.
     *
     * @param value finite, in the base unit
     * @param unit  the unit to print in
     */
    public static String print(double value, Unit unit) {
        BigDecimal exact = unit.fromBase(value);
        // the fewest digits that give the value back: between none and enough, halving
        int few = 0;
        int enough = value == 0 ? 1 : MOST_DIGITS;
        while (enough - few > 1) {
            int digits = (few + enough) / 2;
            if (unit.toBase(rounded(exact, digits)) == value) {
                enough = digits;
            } else {
                few = digits;
            }
        }
        String number = value == 0 ? "0" : plain(rounded(exact, enough));
        return unit.text().isEmpty() ? number : number + " " + unit.text();
    }

    private static BigDecimal rounded(BigDecimal exact, int digits) {
        return exact.round(new MathContext(digits, RoundingMode.HALF_EVEN));
    }

    /** A value of the base unit printed in full precision in the unit in which its mantissa is easiest to read. */
    public static String print(double value, Dimension dimension) {
        Unit best = dimension.plain();
        double bestCost = Double.MAX_VALUE;
        for (Unit unit : dimension.units()) {
            double size = Math.log10(Math.abs(unit.roughly(value)));
            double cost = size < -ROUNDING ? -size : size > 3 + ROUNDING ? size - 3 : 0;
            if (value != 0 && cost < bestCost) {
                best = unit;
                bestCost = cost;
            }
        }
        return print(value, best);
    }

    /** A finite number in full double precision without a unit. */
    public static String print(double value) {
        return print(value, Dimension.NUMBER.plain());
    }

    private static String plain(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        int exponent = stripped.precision() - stripped.scale() - 1;
        if (exponent >= -5 && exponent < 15) {
            return stripped.toPlainString();
        }
        String digits = stripped.unscaledValue().abs().toString();
        String mantissa = digits.substring(0, 1) + "." + (digits.length() > 1 ? digits.substring(1) : "0");
        return (stripped.signum() < 0 ? "-" : "") + mantissa + "e" + (exponent < 0 ? "" : "+") + exponent;
    }
}
