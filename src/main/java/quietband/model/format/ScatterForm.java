package quietband.model.format;

import quietband.model.quantity.NumberRange;
import quietband.units.Dimension;

/** The blocks {@code tolerances}, {@code correlations} and {@code conditions}. */
final class ScatterForm {

    private ScatterForm() { }

    static FormatNode.Entries tolerances() {
        return new FormatNode.Entries(FormatNode.Block.of(
            FormatKey.text("name", FormatNode.Kind.LABEL, "default: the path"),
            FormatKey.text("of", FormatNode.Kind.PATH, "path of the quantity, e.g. platform.springs.stiffness").must(),
            FormatKey.num("scale", Dimension.RATIO, NumberRange.NOT_NEGATIVE, "the quantity is multiplied by 1 + the drawn value"),
            FormatKey.of("add", new FormatNode.AnyAmount(), "the drawn value is added; in the quantity's unit"),
            FormatKey.word("distribution", "value: standard deviation, or half width of the last two", "normal",
                "truncated", "lognormal", "uniform", "triangular"),
            FormatKey.of("truncate_at", new FormatNode.AnyAmount(),
                "largest deviation of a truncated distribution, like scale or add"),
            FormatKey.word("draw", "default: every component its own number; spring: one per place; unit: one for all",
                "spring", "unit"),
            FormatKey.text("lot", FormatNode.Kind.FILE, "CSV file: serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g; rows drawn whole")),
            null, 0);
    }

    static FormatNode.Entries correlations() {
        return new FormatNode.Entries(FormatNode.Block.of(
            FormatKey.of("between", new FormatNode.Labels(), "names of tolerances, pairwise").must(),
            FormatKey.num("coefficient", Dimension.RATIO, NumberRange.between(-1, 1), "of the underlying normals").must()),
            null, 0);
    }

    static FormatNode.Entries conditions() {
        return new FormatNode.Entries(FormatNode.Block.of(
            FormatKey.text("name", FormatNode.Kind.LABEL, "default: the number from 1"),
            FormatKey.of("change", new FormatNode.Entries(FormatNode.Block.of(
                FormatKey.text("of", FormatNode.Kind.PATH, "path of the quantity").must(),
                FormatKey.of("set", new FormatNode.AnyAmount(), "new value, in the quantity's unit"),
                FormatKey.num("scale", Dimension.RATIO, NumberRange.ANY, "multiply by 1 + this"),
                FormatKey.of("add", new FormatNode.AnyAmount(), "add this, in the quantity's unit")), null, 1),
                "what is different").must()), null, 0);
    }
}
