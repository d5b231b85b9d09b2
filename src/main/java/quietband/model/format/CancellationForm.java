package quietband.model.format;

import static quietband.model.quantity.NumberRange.ANY;
import static quietband.model.quantity.NumberRange.NOT_NEGATIVE;
import static quietband.model.quantity.NumberRange.POSITIVE;

import java.util.List;
import quietband.model.quantity.NumberRange;
import quietband.units.Dimension;

/** The block {@code cancellation}. */
final class CancellationForm {

    /** Keys of cross_axis: first what the sensor of this axis reads, then of which acceleration. */
    static final List<String> CROSS = List.of("xy", "xz", "yx", "yz", "zx", "zy");

    private CancellationForm() { }

    static FormatNode.Block block() {
        return FormatNode.Block.of(
            FormatKey.word("calibrated", "weights follow each unit's own sensitivity, or the design's", "each", "design"),
            FormatKey.axes("weights", Dimension.SENSITIVITY, ANY,
                "of the cancellation, used as written; default: the turned sensitivity"),
            FormatKey.of("sensor", sensor(), "three accelerometers, one per axis").must(),
            FormatKey.of("path", path(), "from the sensor to the tuning port"),
            FormatKey.of("tuning", tuning(), "the tuning port"),
            FormatKey.of("error", FormatNode.Block.of(
                FormatKey.axes("gain", Dimension.RATIO, ANY, "relative").or(0),
                FormatKey.axes("phase", Dimension.ANGLE, ANY, "the same at all frequencies; a lead is positive").or(0),
                FormatKey.axes("delay", Dimension.TIME, ANY, "beyond the latency").or(0)),
                "what the path differs by from what is meant"));
    }

    private static FormatNode.Block sensor() {
        return FormatNode.Block.of(
            FormatKey.word("place", "where it sits", "platform", "housing"),
            FormatKey.axes("position", Dimension.LENGTH, ANY, "from the origin").or(0),
            FormatKey.axes("bandwidth", Dimension.FREQUENCY, POSITIVE, "one pole").orNone(),
            FormatKey.of("resonance", new FormatNode.AxisBlock(FormatNode.Block.of(
                FormatKey.num("frequency", Dimension.FREQUENCY, POSITIVE, "of the sensor").orNone().must(),
                FormatKey.num("q", Dimension.NUMBER, POSITIVE, "quality factor").must())), "of the sensor"),
            FormatKey.axes("noise", Dimension.ACCELERATION_NOISE, NOT_NEGATIVE, "one-sided").or(0),
            FormatKey.axes("range", Dimension.ACCELERATION, POSITIVE, "largest acceleration, each way").everyAxis()
                .or(Double.POSITIVE_INFINITY),
            FormatKey.of("cross_axis", new FormatNode.Spread(CROSS, new FormatNode.Num(Dimension.RATIO, ANY), FormatNode.Missing.ZERO),
                "what is left by calibration; xy: what the x sensor reads per unit y acceleration").or(0));
    }

    private static FormatNode.Block path() {
        return FormatNode.Block.of(
            FormatKey.num("sample_rate", Dimension.FREQUENCY, POSITIVE, "leave out for an analog path"),
            FormatKey.num("latency", Dimension.TIME, NOT_NEGATIVE, "pure delay").or(0),
            FormatKey.of("high_pass", pass(), "analog Butterworth"),
            FormatKey.of("low_pass", pass(), "analog Butterworth"),
            FormatKey.text("filter", FormatNode.Kind.FILE,
                "CSV file: sensor_axis,kind,index,b0,b1,b2,a1,a2[,rate_hz]; kind is tap or section"),
            FormatKey.of("taps", new FormatNode.Coefficients(1), "of a digital filter, a list for all axes or {x, y, z}"),
            FormatKey.of("sections", new FormatNode.Coefficients(5),
                "second order, rows [b0, b1, b2, a1, a2], a list for all axes or {x, y, z}"),
            FormatKey.num("converter_bits", Dimension.NUMBER, NumberRange.whole(1, 48), "resolution of the converter"));
    }

    private static FormatNode.Block pass() {
        return FormatNode.Block.of(
            FormatKey.num("frequency", Dimension.FREQUENCY, POSITIVE, "corner at -3 dB").must(),
            FormatKey.num("order", Dimension.NUMBER, NumberRange.whole(1, 20), "order").or(1));
    }

    private static FormatNode.Block tuning() {
        return FormatNode.Block.of(
            FormatKey.num("slope", Dimension.PER_VOLT, ANY, "fractional frequency per volt, may be negative").or(0),
            FormatKey.num("bandwidth", Dimension.FREQUENCY, POSITIVE, "one pole").orNone(),
            FormatKey.num("range", Dimension.VOLTAGE, POSITIVE, "largest voltage, each way").orNone(),
            FormatKey.num("noise", Dimension.VOLTAGE_NOISE, NOT_NEGATIVE, "one-sided").or(0),
            FormatKey.num("curvature", Dimension.PER_VOLT, ANY, "c of slope (v + c v^2/2)").or(0));
    }
}
