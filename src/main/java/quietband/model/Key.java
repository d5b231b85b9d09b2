package quietband.model;

import java.util.List;
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
record Key(String name, Form form, boolean required, double fallback, String doc) {

    static Key of(String name, Form form, String doc) {
        return new Key(name, form, false, Double.NaN, doc);
    }

    static Key num(String name, Dimension dimension, Range range, String doc) {
        return of(name, new Form.Num(dimension, range), doc);
    }

    static Key axes(String name, Dimension dimension, Range range, String doc) {
        return of(name, new Form.Spread(Form.Spread.XYZ, new Form.Num(dimension, range), Form.Missing.ZERO), doc);
    }

    static Key word(String name, String doc, String... words) {
        return of(name, new Form.Choice(List.of(words)), doc);
    }

    static Key text(String name, Form.Kind kind, String doc) {
        return of(name, new Form.Text(kind), doc);
    }

    Key must() {
        return new Key(name, form, true, fallback, doc);
    }

    /** Default number, in the base unit. */
    Key or(double value) {
        return new Key(name, form, required, value, doc);
    }

    /** A missing axis is a mistake. */
    Key everyAxis() {
        return missing(Form.Missing.REFUSED);
    }

    /** Nothing there without it: infinite, also on a missing axis. */
    Key orNone() {
        Key key = form instanceof Form.Spread ? missing(Form.Missing.NONE) : this;
        return key.or(Double.POSITIVE_INFINITY);
    }

    private Key missing(Form.Missing missing) {
        Form.Spread spread = (Form.Spread) form;
        return new Key(name, new Form.Spread(spread.keys(), spread.each(), missing), required, fallback, doc);
    }
}
