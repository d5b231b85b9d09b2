package quietband.filter.design;

import quietband.demand.Decibels;
import quietband.demand.PhaseNoise;
import quietband.model.Design;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.oscillator.Sidebands;
import quietband.response.DesignGrid;
import quietband.spectrum.FrequencyQuadrature;

/**
 * What the cancellation adds to the phase noise of a unit that nothing shakes.
 *
 * @param riseDb      largest rise over the oscillator at rest in the band, dB; NaN without {@code static_phase_noise}
 * @param frequencyHz where
 * @param staticRad    integrated phase noise of the oscillator at rest over the jitter's band, rad
 * @param addedRad    of sensors, converter and port alone, rad
 */
public record AddedNoise(double riseDb, double frequencyHz, double staticRad, double addedRad) {

    static AddedNoise of(Design design) {
        PhaseNoise noise = new PhaseNoise(design);
        Requirement r = design.requirement();
        Stack stack = Stack.fullest(design);
        double worst = Double.NaN;
        double at = Double.NaN;
        for (double f : DesignGrid.of(design, r.fromHz(), r.toHz())) {
            double quiet = noise.staticNoise(f);
            double rise = Decibels.ofPower(noise.floor(stack, f) / quiet);
            if (quiet > 0 && !(rise <= worst)) {
                worst = rise;
                at = f;
            }
        }
        double from = r.jitter().map(Requirement.Jitter::fromHz).orElse(r.fromHz());
        double to = r.jitter().map(Requirement.Jitter::toHz).orElse(r.toHz());
        double[] sums = FrequencyQuadrature.integrate(DesignGrid.of(design, from, to), 2, (f, into) -> {
            into[0] = noise.staticNoise(f);
            into[1] = noise.floor(stack, f) - noise.staticNoise(f);
        });
        return new AddedNoise(worst, at, Sidebands.jitterRad(sums[0]), Sidebands.jitterRad(Math.max(0, sums[1])));
    }
}
