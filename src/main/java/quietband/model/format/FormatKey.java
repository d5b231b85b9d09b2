package quietband.model.format;

import java.util.List;
import quietband.model.quantity.NumberRange;
import quietband.units.Dimension;

/**
 * A key of a block.
 *
 * @param name     as written
 * @param form     what stands there
 * @param required whether the block is incomplete without it
 * @param fallback number in the base unit when left out (for each axis); NaN or infinite where there is none
 * @param doc      one line: what it is
 */
public record FormatKey(String name, FormatNode form, boolean required, double fallback, String doc) {

    public static FormatKey of(String name, FormatNode form, String doc) {
        return new FormatKey(name, form, false, Double.NaN, doc);
    }

    static FormatKey num(String name, Dimension dimension, NumberRange range, String doc) {
        return of(name, new FormatNode.Num(dimension, range), doc);
    }

    static FormatKey axes(String name, Dimension dimension, NumberRange range, String doc) {
        return of(name, new FormatNode.Spread(FormatNode.Spread.XYZ, new FormatNode.Num(dimension, range), FormatNode.Missing.ZERO), doc);
    }

    static FormatKey word(String name, String doc, String... words) {
        return of(name, new FormatNode.Choice(List.of(words)), doc);
    }

    static FormatKey text(String name, FormatNode.Kind kind, String doc) {
        return of(name, new FormatNode.Text(kind), doc);
    }

    FormatKey must() {
        return new FormatKey(name, form, true, fallback, doc);
    }

    /** Default number, in the base unit. */
    FormatKey or(double value) {
        return new FormatKey(name, form, required, value, doc);
    }

    /** A missing axis is a mistake. */
    FormatKey everyAxis() {
        return missing(FormatNode.Missing.REFUSED);
    }

    /** Nothing there without it: infinite, also on a missing axis. */
    FormatKey orNone() {
        FormatKey key = form instanceof FormatNode.Spread ? missing(FormatNode.Missing.NONE) : this;
        return key.or(Double.POSITIVE_INFINITY);
    }

    private FormatKey missing(FormatNode.Missing missing) {
        FormatNode.Spread spread = (FormatNode.Spread) form;
        return new FormatKey(name, new FormatNode.Spread(spread.keys(), spread.each(), missing), required, fallback, doc);
    }
}
