package quietband.model;

import quietband.units.Dimension;

/** The blocks {@code tolerances}, {@code correlations} and {@code conditions}. */
final class ScatterForm {

    private ScatterForm() { }

    static Form.Entries tolerances() {
        return new Form.Entries(Form.Block.of(
            Key.text("name", Form.Kind.LABEL, "default: the path"),
            Key.text("of", Form.Kind.PATH, "path of the quantity, e.g. platform.springs.stiffness").must(),
            Key.num("scale", Dimension.RATIO, Range.NOT_NEGATIVE, "the quantity is multiplied by 1 + the drawn value"),
            Key.of("add", new Form.AnyAmount(), "the drawn value is added; in the quantity's unit"),
            Key.word("shape", "distribution; value: standard deviation, or half width of the last two", "normal",
                "truncated", "lognormal", "uniform", "triangular"),
            Key.of("limits", new Form.AnyAmount(), "largest deviation of a truncated shape, like scale or add"),
            Key.word("draw", "default: every component its own number; spring: one per place; once: one for all",
                "spring", "once"),
            Key.text("lot", Form.Kind.FILE, "CSV file: serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g; rows drawn whole")),
            null, 0);
    }

    static Form.Entries correlations() {
        return new Form.Entries(Form.Block.of(
            Key.of("between", new Form.Labels(), "names of tolerances, pairwise").must(),
            Key.num("coefficient", Dimension.RATIO, Range.between(-1, 1), "of the underlying normals").must()),
            null, 0);
    }

    static Form.Entries conditions() {
        return new Form.Entries(Form.Block.of(
            Key.text("name", Form.Kind.LABEL, "default: the number from 1"),
            Key.of("change", new Form.Entries(Form.Block.of(
                Key.text("of", Form.Kind.PATH, "path of the quantity").must(),
                Key.of("set", new Form.AnyAmount(), "new value, in the quantity's unit"),
                Key.num("scale", Dimension.RATIO, Range.ANY, "multiply by 1 + this"),
                Key.of("add", new Form.AnyAmount(), "add this, in the quantity's unit")), null, 1),
                "what is different").must()), null, 0);
    }
}
