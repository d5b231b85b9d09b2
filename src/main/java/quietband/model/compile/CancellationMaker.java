package quietband.model.compile;

import java.util.List;
import java.util.Optional;
import quietband.model.Cancellation;
import quietband.model.DigitalFilter;
import quietband.model.Oscillator;
import quietband.model.Resonance;
import quietband.model.Vec;
import quietband.model.format.WrittenValue;

/** Compiles the block {@code cancellation}. */
final class CancellationMaker {

    private CancellationMaker() { }

    static CompiledPart<Cancellation> compile(WrittenValue block, CompiledPart<Oscillator.Resonator> resonator, double[] nominal) {
        boolean each = !block.get("calibrated").text().equals("design");
        CompiledPart<Optional<Vec>> weights = weights(block.get("weights"), resonator, nominal);
        CompiledPart<Cancellation.Sensor> sensor = sensor(block.get("sensor"));
        CompiledPart<Cancellation.Path> path = path(block.get("path"));
        CompiledPart<Cancellation.Tuning> tuning = tuning(block.get("tuning"));
        WrittenValue error = block.get("error");
        int gain = error.get("gain").slot();
        int phase = error.get("phase").slot();
        int delay = error.get("delay").slot();
        return v -> new Cancellation(each, weights.from(v), sensor.from(v), path.from(v), tuning.from(v),
            new Cancellation.PathError(CompiledPart.vec(v, gain), CompiledPart.vec(v, phase), CompiledPart.vec(v, delay)));
    }

    /** As written; else empty, or the turned sensitivity changed as far as its slots are. */
    private static CompiledPart<Optional<Vec>> weights(WrittenValue written, CompiledPart<Oscillator.Resonator> resonator,
                                               double[] nominal) {
        if (written.given()) {
            return CompiledPart.optionalVec(written);
        }
        int i = written.slot();
        return v -> {
            if (v[i] == nominal[i] && v[i + 1] == nominal[i + 1] && v[i + 2] == nominal[i + 2]) {
                return Optional.empty();
            }
            Vec g = resonator.from(v).mountedSensitivityPerG();
            return Optional.of(new Vec(DerivedNumbers.value(g.x(), v[i], nominal[i]),
                DerivedNumbers.value(g.y(), v[i + 1], nominal[i + 1]), DerivedNumbers.value(g.z(), v[i + 2], nominal[i + 2])));
        };
    }

    private static CompiledPart<Cancellation.Sensor> sensor(WrittenValue block) {
        boolean onPlatform = !block.get("place").text().equals("housing");
        int position = block.get("position").slot();
        int bandwidth = block.get("bandwidth").slot();
        CompiledPart<Resonance> resonance = CompiledPart.resonance(block.get("resonance"));
        int noise = block.get("noise").slot();
        int range = block.get("range").slot();
        int cross = block.get("cross_axis").slot();
        return v -> new Cancellation.Sensor(onPlatform, CompiledPart.vec(v, position), CompiledPart.vec(v, bandwidth),
            resonance.from(v), CompiledPart.vec(v, noise), CompiledPart.vec(v, range), crossAxis(v, cross));
    }

    /** X row by row from its six elements off the diagonal: xy, xz, yx, yz, zx, zy. */
    private static List<Double> crossAxis(double[] v, int i) {
        return List.of(1.0, v[i], v[i + 1], v[i + 2], 1.0, v[i + 3], v[i + 4], v[i + 5], 1.0);
    }

    private static CompiledPart<Cancellation.Path> path(WrittenValue block) {
        WrittenValue rate = block.get("sample_rate");
        boolean sampled = rate.given();
        int latency = block.get("latency").slot();
        CompiledPart<Optional<Cancellation.Pass>> high = pass(block.get("high_pass"));
        CompiledPart<Optional<Cancellation.Pass>> low = pass(block.get("low_pass"));
        List<DigitalFilter> filters = DigitalFilters.of(block);
        WrittenValue bits = block.get("converter_bits");
        boolean converted = bits.given();
        int bitSlot = bits.slot();
        int rateSlot = rate.slot();
        return v -> new Cancellation.Path(sampled ? v[rateSlot] : 0, v[latency], high.from(v), low.from(v), filters,
            converted ? (int) Math.rint(v[bitSlot]) : 0);
    }

    private static CompiledPart<Optional<Cancellation.Pass>> pass(WrittenValue block) {
        int frequency = block.get("frequency").slot();
        int order = block.get("order").slot();
        return block.given() ? v -> Optional.of(new Cancellation.Pass(v[frequency], (int) Math.rint(v[order])))
            : v -> Optional.empty();
    }

    private static CompiledPart<Cancellation.Tuning> tuning(WrittenValue block) {
        int slope = block.get("slope").slot();
        int bandwidth = block.get("bandwidth").slot();
        int range = block.get("range").slot();
        int noise = block.get("noise").slot();
        int curvature = block.get("curvature").slot();
        return v -> new Cancellation.Tuning(v[slope], v[bandwidth], v[range], v[noise], v[curvature]);
    }
}
