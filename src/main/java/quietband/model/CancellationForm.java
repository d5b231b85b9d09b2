package quietband.model;

import static quietband.model.Range.ANY;
import static quietband.model.Range.NOT_NEGATIVE;
import static quietband.model.Range.POSITIVE;

import java.util.List;
import quietband.units.Dimension;

/** The block {@code cancellation}. */
final class CancellationForm {

    /** Keys of cross_axis: first what the sensor of this axis reads, then of which acceleration. */
    static final List<String> CROSS = List.of("xy", "xz", "yx", "yz", "zx", "zy");

    private CancellationForm() { }

    static Form.Block block() {
        return Form.Block.of(
            Key.word("calibrated", "weights follow each unit's own sensitivity, or the design's", "each", "design"),
            Key.axes("weights", Dimension.SENSITIVITY, ANY,
                "of the correction, used as written; default: the turned sensitivity"),
            Key.of("sensor", sensor(), "three accelerometers, one per axis").must(),
            Key.of("path", path(), "from the sensor to the tuning port"),
            Key.of("tuning", tuning(), "the tuning port"),
            Key.of("error", Form.Block.of(
                Key.axes("gain", Dimension.RATIO, ANY, "relative").or(0),
                Key.axes("phase", Dimension.ANGLE, ANY, "the same at all frequencies; a lead is positive").or(0),
                Key.axes("delay", Dimension.TIME, ANY, "beyond the latency").or(0)),
                "what the path differs by from what is meant"));
    }

    private static Form.Block sensor() {
        return Form.Block.of(
            Key.word("place", "where it sits", "platform", "housing"),
            Key.axes("position", Dimension.LENGTH, ANY, "from the origin").or(0),
            Key.axes("bandwidth", Dimension.FREQUENCY, POSITIVE, "one pole").orNone(),
            Key.of("resonance", new Form.AxisBlock(Form.Block.of(
                Key.num("frequency", Dimension.FREQUENCY, POSITIVE, "of the sensor").orNone().must(),
                Key.num("q", Dimension.NUMBER, POSITIVE, "quality factor").must())), "of the sensor"),
            Key.axes("noise", Dimension.ACCELERATION_NOISE, NOT_NEGATIVE, "one-sided").or(0),
            Key.axes("range", Dimension.ACCELERATION, POSITIVE, "largest acceleration, each way").everyAxis()
                .or(Double.POSITIVE_INFINITY),
            Key.of("cross_axis", new Form.Spread(CROSS, new Form.Num(Dimension.RATIO, ANY), Form.Missing.ZERO),
                "what is left by calibration; xy: what the x sensor reads per unit y acceleration").or(0));
    }

    private static Form.Block path() {
        return Form.Block.of(
            Key.num("sample_rate", Dimension.FREQUENCY, POSITIVE, "leave out for an analog path"),
            Key.num("latency", Dimension.TIME, NOT_NEGATIVE, "pure delay").or(0),
            Key.of("high_pass", pass(), "analog Butterworth"),
            Key.of("low_pass", pass(), "analog Butterworth"),
            Key.text("filter", Form.Kind.FILE,
                "CSV file: sensor_axis,kind,index,b0,b1,b2,a1,a2[,rate_hz]; kind is tap or section"),
            Key.of("taps", new Form.Coefficients(1), "of a digital filter, a list for all axes or {x, y, z}"),
            Key.of("sections", new Form.Coefficients(5),
                "second order, rows [b0, b1, b2, a1, a2], a list for all axes or {x, y, z}"),
            Key.num("converter_bits", Dimension.NUMBER, Range.whole(1, 48), "resolution of the converter"));
    }

    private static Form.Block pass() {
        return Form.Block.of(
            Key.num("frequency", Dimension.FREQUENCY, POSITIVE, "corner at -3 dB").must(),
            Key.num("order", Dimension.NUMBER, Range.whole(1, 20), "order").or(1));
    }

    private static Form.Block tuning() {
        return Form.Block.of(
            Key.num("slope", Dimension.PER_VOLT, ANY, "fractional frequency per volt, may be negative").or(0),
            Key.num("bandwidth", Dimension.FREQUENCY, POSITIVE, "one pole").orNone(),
            Key.num("range", Dimension.VOLTAGE, POSITIVE, "largest voltage, each way").orNone(),
            Key.num("noise", Dimension.VOLTAGE_NOISE, NOT_NEGATIVE, "one-sided").or(0),
            Key.num("curvature", Dimension.PER_VOLT, ANY, "c of slope (v + c v^2/2)").or(0));
    }
}
