package quietband.model.compile;

import java.util.Optional;
import quietband.model.Oscillator;
import quietband.model.Resonance;
import quietband.model.Rotation;
import quietband.model.format.WrittenValue;
import quietband.spectrum.LogCurve;

/** Compiles the block {@code oscillator}. */
final class OscillatorMaker {

    private OscillatorMaker() { }

    static CompiledPart<Oscillator> compile(WrittenValue oscillator, double[] nominal) {
        int carrier = oscillator.get("carrier").slot();
        WrittenValue output = oscillator.get("output");
        int judged = output.slot();
        boolean follows = !output.given();
        CompiledPart<Optional<LogCurve>> staticNoise =
            CompiledPart.curve(oscillator.get("static_phase_noise"), "offset", "level", LogCurve::decibel, nominal);
        CompiledPart<Oscillator.Resonator> resonator = resonator(oscillator.get("resonator"));
        return v -> new Oscillator(v[carrier],
            follows ? DerivedNumbers.value(v[carrier], v[judged], nominal[judged]) : v[judged], staticNoise.from(v), resonator.from(v));
    }

    static CompiledPart<Oscillator.Resonator> resonator(WrittenValue block) {
        String cut = block.get("cut").text();
        String support = block.get("support").text();
        int sensitivity = block.get("sensitivity").slot();
        int position = block.get("position").slot();
        CompiledPart<Resonance> resonance = CompiledPart.resonance(block.get("support_resonance"));
        CompiledPart<Rotation> orientation = CompiledPart.orientation(block.get("orientation"));
        return v -> new Oscillator.Resonator(cut, support, CompiledPart.vec(v, sensitivity), CompiledPart.vec(v, position),
            resonance.from(v), orientation.from(v));
    }
}
