package quietband.model;

import java.util.Optional;
import quietband.spectrum.LogCurve;

/** Compiles the block {@code oscillator}. */
final class OscillatorMaker {

    private OscillatorMaker() { }

    static Made<Oscillator> compile(Written oscillator, double[] nominal) {
        int carrier = oscillator.get("carrier").slot();
        Written output = oscillator.get("output");
        int judged = output.slot();
        boolean follows = !output.given();
        Made<Optional<LogCurve>> quiet =
            Made.curve(oscillator.get("quiet_phase_noise"), "offset", "level", LogCurve::decibel, nominal);
        Made<Oscillator.Resonator> resonator = resonator(oscillator.get("resonator"));
        return v -> new Oscillator(v[carrier],
            follows ? Followers.value(v[carrier], v[judged], nominal[judged]) : v[judged], quiet.from(v), resonator.from(v));
    }

    static Made<Oscillator.Resonator> resonator(Written block) {
        String cut = block.get("cut").text();
        String support = block.get("support").text();
        int sensitivity = block.get("sensitivity").slot();
        int position = block.get("position").slot();
        Made<Resonance> resonance = Made.resonance(block.get("support_resonance"));
        Made<Turn> orientation = Made.turn(block.get("orientation"));
        return v -> new Oscillator.Resonator(cut, support, Made.vec(v, sensitivity), Made.vec(v, position),
            resonance.from(v), orientation.from(v));
    }
}
