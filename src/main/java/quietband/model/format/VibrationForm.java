package quietband.model.format;

import static quietband.model.quantity.NumberRange.ANY;
import static quietband.model.quantity.NumberRange.NOT_NEGATIVE;
import static quietband.model.quantity.NumberRange.POSITIVE;

import quietband.units.Dimension;

/** The block {@code vibration}. */
final class VibrationForm {

    private VibrationForm() { }

    static FormatNode.Block block() {
        return FormatNode.Block.of(
            FormatKey.word("apply", "driven axes one after another, or all at once", "one_at_a_time", "together"),
            FormatKey.of("axes", new FormatNode.AxisSet(), "which axes are driven for noise and travel; default: all"),
            FormatKey.of("gravity", new FormatNode.Direction(true), "where down is: -z, x or a direction {x, y, z}"),
            FormatKey.of("random", new FormatNode.AxisBlock(random()), "acceleration density, one for all axes or {x, y, z}"),
            FormatKey.of("tones", new FormatNode.Entries(tone(), null, 0), "sinusoidal lines"),
            FormatKey.of("shock", FormatNode.Block.of(
                FormatKey.word("shape", "default: half-sine; a sawtooth has its peak at the end", "half-sine", "rectangle",
                    "triangle", "sawtooth"),
                FormatKey.num("peak", Dimension.ACCELERATION, NOT_NEGATIVE, "of the pulse").must(),
                FormatKey.num("duration", Dimension.TIME, POSITIVE, "of the pulse").must()), "a single pulse"),
            FormatKey.num("sustained", Dimension.ACCELERATION, NOT_NEGATIVE, "steady, each axis and both ways").or(0));
    }

    private static FormatNode.Block random() {
        return FormatNode.Block.of(
            FormatKey.text("file", FormatNode.Kind.FILE, "CSV file: frequency_hz,density_g2_per_hz"),
            FormatKey.of("points", new FormatNode.Entries(FormatNode.Block.of(
                FormatKey.num("frequency", Dimension.FREQUENCY, POSITIVE, "of the point").must(),
                FormatKey.num("density", Dimension.DENSITY, NOT_NEGATIVE, "one-sided").must()), "frequency", 1),
                "the profile itself, straight on log-log paper, zero outside"),
            FormatKey.num("scale", Dimension.DECIBEL, ANY, "10 log10 of the factor on the density").or(0)).notStanding();
    }

    private static FormatNode.Block tone() {
        return FormatNode.Block.of(
            FormatKey.text("name", FormatNode.Kind.LABEL, "default: the number from 1"),
            FormatKey.num("frequency", Dimension.FREQUENCY, POSITIVE, "of the line").must(),
            FormatKey.num("peak", Dimension.ACCELERATION, NOT_NEGATIVE, "peak, not rms").must(),
            FormatKey.of("axis", new FormatNode.OneAxis(), "x, y or z; default: each of them"));
    }
}
