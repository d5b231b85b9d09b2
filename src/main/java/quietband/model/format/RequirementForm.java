package quietband.model.format;

import static quietband.model.quantity.NumberRange.POSITIVE;

import quietband.model.quantity.NumberRange;
import quietband.units.Dimension;

/** The block {@code requirement}. */
final class RequirementForm {

    private RequirementForm() { }

    static FormatNode.Block block() {
        return FormatNode.Block.of(
            FormatKey.of("band", FormatNode.Block.of(
                FormatKey.num("from", Dimension.FREQUENCY, POSITIVE, "lower edge").or(10),
                FormatKey.num("to", Dimension.FREQUENCY, POSITIVE, "upper edge").or(2000)),
                "where the design is judged; default: 10 Hz to 2 kHz"),
            FormatKey.word("by", "worst axis, or root of the sum of squares over axes", "axis", "vector"),
            FormatKey.of("residual", new FormatNode.WordOr("from_phase_noise", new FormatNode.Entries(FormatNode.Block.of(
                FormatKey.num("frequency", Dimension.FREQUENCY, POSITIVE, "of the point").must(),
                FormatKey.num("limit", Dimension.SENSITIVITY, POSITIVE, "largest residual sensitivity").must()),
                "frequency", 1)), "limit points, or from_phase_noise"),
            FormatKey.of("phase_noise", OscillatorForm.levels("offset", "offset from the output", "limit",
                Dimension.PHASE_NOISE, "largest phase noise"), "limit at the output"),
            FormatKey.of("tones", OscillatorForm.levels("frequency", "of the tone", "limit", Dimension.CARRIER_LEVEL,
                "largest sideband"), "limit of the sidebands of tones at the output"),
            FormatKey.of("jitter", FormatNode.Block.of(
                FormatKey.num("limit", Dimension.ANGLE, POSITIVE, "largest rms phase").must(),
                FormatKey.num("from", Dimension.FREQUENCY, POSITIVE, "lower offset; default: the band's"),
                FormatKey.num("to", Dimension.FREQUENCY, POSITIVE, "upper offset; default: the band's")),
                "limit of the phase jitter"),
            FormatKey.of("yield", FormatNode.Block.of(
                FormatKey.num("share", Dimension.RATIO, new NumberRange(0, true, 1, false), "of units that must meet").must(),
                FormatKey.num("confidence", Dimension.RATIO, new NumberRange(0, true, 1 - 1e-9, false),
                    "of the claim; default: 90 %").or(0.9)), "required share of good units"));
    }
}
