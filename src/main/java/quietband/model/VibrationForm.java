package quietband.model;

import static quietband.model.Range.ANY;
import static quietband.model.Range.NOT_NEGATIVE;
import static quietband.model.Range.POSITIVE;

import quietband.units.Dimension;

/** The block {@code vibration}. */
final class VibrationForm {

    private VibrationForm() { }

    static Form.Block block() {
        return Form.Block.of(
            Key.word("apply", "driven axes one after another, or all at once", "one_at_a_time", "together"),
            Key.of("axes", new Form.AxisSet(), "which axes are driven for noise and travel; default: all"),
            Key.of("gravity", new Form.Direction(true), "where down is: -z, x or a direction {x, y, z}"),
            Key.of("random", new Form.AxisBlock(random()), "acceleration density, one for all axes or {x, y, z}"),
            Key.of("tones", new Form.Entries(tone(), null, 0), "sinusoidal lines"),
            Key.of("shock", Form.Block.of(
                Key.word("shape", "default: half-sine; a sawtooth has its peak at the end", "half-sine", "rectangle",
                    "triangle", "sawtooth"),
                Key.num("peak", Dimension.ACCELERATION, NOT_NEGATIVE, "of the pulse").must(),
                Key.num("duration", Dimension.TIME, POSITIVE, "of the pulse").must()), "a single pulse"),
            Key.num("sustained", Dimension.ACCELERATION, NOT_NEGATIVE, "steady, each axis and both ways").or(0));
    }

    private static Form.Block random() {
        return Form.Block.of(
            Key.text("file", Form.Kind.FILE, "CSV file: frequency_hz,density_g2_per_hz"),
            Key.of("points", new Form.Entries(Form.Block.of(
                Key.num("frequency", Dimension.FREQUENCY, POSITIVE, "of the point").must(),
                Key.num("density", Dimension.DENSITY, NOT_NEGATIVE, "one-sided").must()), "frequency", 1),
                "the profile itself, straight on log-log paper, zero outside"),
            Key.num("scale", Dimension.DECIBEL, ANY, "10 log10 of the factor on the density").or(0)).notStanding();
    }

    private static Form.Block tone() {
        return Form.Block.of(
            Key.text("name", Form.Kind.LABEL, "default: the number from 1"),
            Key.num("frequency", Dimension.FREQUENCY, POSITIVE, "of the line").must(),
            Key.num("peak", Dimension.ACCELERATION, NOT_NEGATIVE, "peak, not rms").must(),
            Key.of("axis", new Form.OneAxis(), "x, y or z; default: each of them"));
    }
}
