package quietband.model;

import java.util.Optional;
import quietband.spectrum.LogCurve;

/**
 * The oscillator: where it runs, where it is judged, its own noise and its resonator.
 *
 * @param carrierHz        frequency of the oscillator, in Hz, above 0
 * @param outputHz         frequency at which phase noise is judged, in Hz, above 0
 * @param staticPhaseNoise  one-sided phase noise at the carrier without vibration, dBc/Hz over offset in Hz
 * @param resonator        the resonator
 */
public record Oscillator(double carrierHz, double outputHz, Optional<LogCurve> staticPhaseNoise, Resonator resonator) {

    /**
     * The resonator as written.
     *
     * @param cut              free text
     * @param support          free text
     * @param sensitivityPerG  acceleration sensitivity vector before it is turned, fractional frequency per g
     * @param position         of the blank from the origin, in m
     * @param supportResonance of the blank on its support, per axis of the platform
     * @param orientation      turn of the sensitivity vector
     */
    public record Resonator(String cut, String support, Vec sensitivityPerG, Vec position,
                            Resonance supportResonance, Rotation orientation) {

        /** The sensitivity vector G as mounted: turned by the orientation; 1/g. */
        public Vec mountedSensitivityPerG() {
            return orientation.isNone() ? sensitivityPerG : orientation.apply(sensitivityPerG);
        }
    }

    /** The factor from densities at the carrier to densities at the output, (output/carrier)^2. */
    public double outputGain() {
        double n = outputHz / carrierHz;
        return n * n;
    }
}
