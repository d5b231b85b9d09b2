package quietband.model;

import static quietband.model.Range.ANY;
import static quietband.model.Range.POSITIVE;

import quietband.units.Dimension;

/** The block {@code oscillator}. */
final class OscillatorForm {

    static final Form.AxisBlock SUPPORT_RESONANCE = new Form.AxisBlock(Form.Block.of(
        Key.num("frequency", Dimension.FREQUENCY, POSITIVE, "resonance of the blank on its support").orNone().must(),
        Key.num("q", Dimension.NUMBER, POSITIVE, "quality factor").must()));

    private OscillatorForm() { }

    /** A turn about an axis, used for the resonator and for springs. */
    static Form.Block turn() {
        return Form.Block.of(
            Key.of("axis", new Form.Direction(false), "x, y, z or a direction {x, y, z}").must(),
            Key.num("angle", Dimension.ANGLE, ANY, "right-handed: 90 deg about z takes x to y").or(0).must())
            .standing();
    }

    /** Points of a line in dB over offset or frequency. */
    static Form.Entries levels(String over, String what, String level, Dimension dimension, String doc) {
        return new Form.Entries(Form.Block.of(
            Key.num(over, Dimension.FREQUENCY, POSITIVE, what).must(),
            Key.num(level, dimension, ANY, doc).must()), over, 1);
    }

    static Form.Block block() {
        return Form.Block.of(
            Key.num("carrier", Dimension.FREQUENCY, POSITIVE, "frequency of the oscillator").must(),
            Key.num("output", Dimension.FREQUENCY, POSITIVE,
                "frequency at which phase noise is judged; default: the carrier"),
            Key.of("quiet_phase_noise", levels("offset", "offset from the carrier", "level", Dimension.PHASE_NOISE,
                "one-sided phase noise without vibration"), "phase noise at the carrier without vibration"),
            Key.of("resonator", resonator(), "the resonator").must());
    }

    private static Form.Block resonator() {
        return Form.Block.of(
            Key.text("cut", Form.Kind.FREE, "cut of the blank, free text for the report"),
            Key.text("support", Form.Kind.FREE, "how the blank is held, free text"),
            Key.axes("sensitivity", Dimension.SENSITIVITY, ANY,
                "acceleration sensitivity vector before it is turned").must(),
            Key.axes("position", Dimension.LENGTH, ANY, "of the blank, from the origin").or(0),
            Key.of("support_resonance", SUPPORT_RESONANCE, "of the blank on its support, one or per axis"),
            Key.of("orientation", turn(), "turn of the sensitivity vector"));
    }
}
