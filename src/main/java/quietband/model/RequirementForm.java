package quietband.model;

import static quietband.model.Range.POSITIVE;

import quietband.units.Dimension;

/** The block {@code requirement}. */
final class RequirementForm {

    private RequirementForm() { }

    static Form.Block block() {
        return Form.Block.of(
            Key.of("band", Form.Block.of(
                Key.num("from", Dimension.FREQUENCY, POSITIVE, "lower edge").or(10),
                Key.num("to", Dimension.FREQUENCY, POSITIVE, "upper edge").or(2000)),
                "where the design is judged; default: 10 Hz to 2 kHz"),
            Key.word("by", "worst axis, or root of the sum of squares over axes", "axis", "vector"),
            Key.of("residual", new Form.WordOr("from_phase_noise", new Form.Entries(Form.Block.of(
                Key.num("frequency", Dimension.FREQUENCY, POSITIVE, "of the point").must(),
                Key.num("limit", Dimension.SENSITIVITY, POSITIVE, "largest residual sensitivity").must()),
                "frequency", 1)), "limit points, or from_phase_noise"),
            Key.of("phase_noise", OscillatorForm.levels("offset", "offset from the output", "limit",
                Dimension.PHASE_NOISE, "largest phase noise"), "limit at the output"),
            Key.of("tones", OscillatorForm.levels("frequency", "of the tone", "limit", Dimension.CARRIER_LEVEL,
                "largest sideband"), "limit of the sidebands of tones at the output"),
            Key.of("jitter", Form.Block.of(
                Key.num("limit", Dimension.ANGLE, POSITIVE, "largest rms phase").must(),
                Key.num("from", Dimension.FREQUENCY, POSITIVE, "lower offset; default: the band's"),
                Key.num("to", Dimension.FREQUENCY, POSITIVE, "upper offset; default: the band's")),
                "limit of the phase jitter"),
            Key.of("yield", Form.Block.of(
                Key.num("share", Dimension.RATIO, new Range(0, true, 1, false), "of units that must meet").must(),
                Key.num("confidence", Dimension.RATIO, new Range(0, true, 1 - 1e-9, false),
                    "of the claim; default: 90 %").or(0.9)), "asked share of good units"));
    }
}
