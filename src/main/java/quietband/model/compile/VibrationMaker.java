package quietband.model.compile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import quietband.model.Axis;
import quietband.model.Vec;
import quietband.model.Vibration;
import quietband.model.format.FormatNode;
import quietband.model.format.WrittenValue;
import quietband.spectrum.LogCurve;

/** Compiles the block {@code vibration}. */
final class VibrationMaker {

    private VibrationMaker() { }

    static CompiledPart<Vibration> compile(WrittenValue block, double[] nominal) {
        boolean together = block.get("apply").text().equals("together");
        Set<Axis> axes = axes(block.get("axes"));
        Optional<Vec> gravity = block.get("gravity").value() instanceof Vec down
            ? Optional.of(down.times(1 / down.length())) : Optional.empty();
        List<CompiledPart<Optional<LogCurve>>> random = new ArrayList<>();
        for (String axis : FormatNode.Spread.XYZ) {
            random.add(random(block.get("random").get(axis), nominal));
        }
        CompiledPart<List<Vibration.Tone>> tones = tones(block.get("tones"));
        CompiledPart<Optional<Vibration.Shock>> shock = shock(block.get("shock"));
        int sustained = block.get("sustained").slot();
        return v -> new Vibration(together, axes, gravity,
            List.of(random.get(0).from(v), random.get(1).from(v), random.get(2).from(v)), tones.from(v),
            shock.from(v), v[sustained]);
    }

    private static Set<Axis> axes(WrittenValue written) {
        if (!(written.value() instanceof Set<?> set)) {
            return Set.copyOf(Axis.ALL);
        }
        return Set.copyOf(Axis.ALL.stream().filter(set::contains).toList());
    }

    /** The profile times 10^(scale/10); empty on an axis without one. */
    private static CompiledPart<Optional<LogCurve>> random(WrittenValue axis, double[] nominal) {
        int scale = axis.get("scale").slot();
        CompiledPart<Optional<LogCurve>> base;
        if (axis.get("file").value() instanceof LogCurve read) {
            Optional<LogCurve> fixed = Optional.of(read);
            base = v -> fixed;
        } else {
            base = CompiledPart.curve(axis.get("points"), "frequency", "density",
                (f, s) -> LogCurve.logLog(f, s, LogCurve.Outside.ZERO), nominal);
        }
        double scale0 = nominal[scale];
        Optional<LogCurve> base0 = base.from(nominal);
        Optional<LogCurve> first = scaled(base0, scale0);
        return v -> {
            Optional<LogCurve> curve = base.from(v);
            boolean same = v[scale] == scale0 && (curve.isEmpty() || curve.get() == base0.orElse(null));
            return same ? first : scaled(curve, v[scale]);
        };
    }

    private static Optional<LogCurve> scaled(Optional<LogCurve> curve, double decibel) {
        return decibel == 0 ? curve : curve.map(c -> c.scaled(Math.pow(10, decibel / 10)));
    }

    private static CompiledPart<List<Vibration.Tone>> tones(WrittenValue list) {
        List<CompiledPart<Vibration.Tone>> all = list.items().stream().map(VibrationMaker::tone).toList();
        return v -> all.stream().map(t -> t.from(v)).toList();
    }

    private static CompiledPart<Vibration.Tone> tone(WrittenValue tone) {
        String name = tone.text();
        int frequency = tone.get("frequency").slot();
        int peak = tone.get("peak").slot();
        Optional<Axis> axis = tone.get("axis").value() instanceof Axis one ? Optional.of(one) : Optional.empty();
        return v -> new Vibration.Tone(name, v[frequency], v[peak], axis);
    }

    private static CompiledPart<Optional<Vibration.Shock>> shock(WrittenValue shock) {
        if (!shock.given()) {
            return v -> Optional.empty();
        }
        Vibration.ShockShape shape = !shock.get("shape").given() ? Vibration.ShockShape.HALF_SINE
            : Vibration.ShockShape.valueOf(shock.get("shape").text().toUpperCase(Locale.ROOT).replace('-', '_'));
        int peak = shock.get("peak").slot();
        int duration = shock.get("duration").slot();
        return v -> Optional.of(new Vibration.Shock(shape, v[peak], v[duration]));
    }
}
