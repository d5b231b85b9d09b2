package quietband.window.values;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import quietband.units.Amounts;

/**
 * An amount as it is typed, to be stepped by keys and dragged by the mouse.
 *
 * @param number as written
 * @param rest   what stands behind it: space and unit
 */
public record TypedAmount(BigDecimal number, String rest) {

    private static final Pattern TEXT = Pattern.compile("\\s*(" + Amounts.NUMBER + ")(.*)");
    private static final int DIGITS = 4;

    /** Reads a text; empty when it does not begin with a number. */
    public static Optional<TypedAmount> of(String text) {
        Matcher m = TEXT.matcher(text);
        return m.matches() ? Optional.of(new TypedAmount(new BigDecimal(m.group(1)), m.group(2))) : Optional.empty();
    }

    /**
     * Some steps away, each one percent of the value, to four digits; from zero in hundredths of the unit.
     *
     * @param steps how many, up or down
     */
    public TypedAmount moved(double steps) {
        if (number.signum() == 0) {
            return new TypedAmount(rounded(new BigDecimal(steps / 100)), rest);
        }
        return new TypedAmount(rounded(number.add(number.abs().multiply(new BigDecimal(steps / 100)))), rest);
    }

    private static BigDecimal rounded(BigDecimal value) {
        return value.round(new MathContext(DIGITS, RoundingMode.HALF_EVEN)).stripTrailingZeros();
    }

    /** As it is typed. */
    public String text() {
        String plain = number.signum() == 0 ? "0" : number.toPlainString();
        return (plain.length() > 12 ? number.toString() : plain) + rest;
    }
}
