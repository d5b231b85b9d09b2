package quietband.units;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * One accepted spelling of a unit. One of it is {@code times / over} of the base unit of its dimension.
 *
 * @param text  as written in files, case matters; empty for a bare number
 * @param times multiplier to the base unit, exact or to 40 digits
 * @param over  divisor to the base unit, exact
 */
public record Unit(String text, BigDecimal times, BigDecimal over) {

    private static final MathContext DIGITS = new MathContext(40);

    /** A unit whose factor is an exact decimal, e.g. {@code ("mm", "1e-3")}. */
    static Unit of(String text, String factor) {
        return new Unit(text, new BigDecimal(factor), BigDecimal.ONE);
    }

    /** A unit whose factor is one over an exact decimal. */
    static Unit ofOver(String text, String divisor) {
        return new Unit(text, BigDecimal.ONE, new BigDecimal(divisor));
    }

    /** The double nearest to the given number of this unit, in the base unit; infinite where it is too large. */
    public double toBase(BigDecimal number) {
        BigDecimal product = number.multiply(times);
        return over.compareTo(BigDecimal.ONE) == 0 ? product.doubleValue() : product.divide(over, DIGITS).doubleValue();
    }

    /** The number of this unit that a value in the base unit is, within some roundings: for choosing a unit. */
    public double roughly(double value) {
        return value * over.doubleValue() / times.doubleValue();
    }

    /** The number of this unit, to 40 digits, that a finite value in the base unit is. */
    public BigDecimal fromBase(double value) {
        return new BigDecimal(value).multiply(over).divide(times, DIGITS);
    }
}
