package quietband.model.format;

import static quietband.model.quantity.NumberRange.ANY;
import static quietband.model.quantity.NumberRange.POSITIVE;

import quietband.units.Dimension;

/** The block {@code oscillator}. */
final class OscillatorForm {

    static final FormatNode.AxisBlock SUPPORT_RESONANCE = new FormatNode.AxisBlock(FormatNode.Block.of(
        FormatKey.num("frequency", Dimension.FREQUENCY, POSITIVE, "resonance of the blank on its support").orNone().must(),
        FormatKey.num("q", Dimension.NUMBER, POSITIVE, "quality factor").must()));

    private OscillatorForm() { }

    /** An orientation by axis and angle, used for the resonator and for springs. */
    static FormatNode.Block orientation() {
        return FormatNode.Block.of(
            FormatKey.of("axis", new FormatNode.Direction(false), "x, y, z or a direction {x, y, z}").must(),
            FormatKey.num("angle", Dimension.ANGLE, ANY, "right-handed: 90 deg about z takes x to y").or(0).must())
            .standing();
    }

    /** Points of a line in dB over offset or frequency. */
    static FormatNode.Entries levels(String over, String what, String level, Dimension dimension, String doc) {
        return new FormatNode.Entries(FormatNode.Block.of(
            FormatKey.num(over, Dimension.FREQUENCY, POSITIVE, what).must(),
            FormatKey.num(level, dimension, ANY, doc).must()), over, 1);
    }

    static FormatNode.Block block() {
        return FormatNode.Block.of(
            FormatKey.num("carrier", Dimension.FREQUENCY, POSITIVE, "frequency of the oscillator").must(),
            FormatKey.num("output", Dimension.FREQUENCY, POSITIVE,
                "frequency at which phase noise is judged; default: the carrier"),
            FormatKey.of("static_phase_noise", levels("offset", "offset from the carrier", "level", Dimension.PHASE_NOISE,
                "one-sided phase noise without vibration"), "phase noise at the carrier without vibration"),
            FormatKey.of("resonator", resonator(), "the resonator").must());
    }

    private static FormatNode.Block resonator() {
        return FormatNode.Block.of(
            FormatKey.text("cut", FormatNode.Kind.FREE, "cut of the blank, free text for the report"),
            FormatKey.text("support", FormatNode.Kind.FREE, "how the blank is held, free text"),
            FormatKey.axes("sensitivity", Dimension.SENSITIVITY, ANY,
                "acceleration sensitivity vector before it is turned").must(),
            FormatKey.axes("position", Dimension.LENGTH, ANY, "of the blank, from the origin").or(0),
            FormatKey.of("support_resonance", SUPPORT_RESONANCE, "of the blank on its support, one or per axis"),
            FormatKey.of("orientation", orientation(), "rotation of the sensitivity vector"));
    }
}
