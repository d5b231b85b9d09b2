package quietband.model;

import java.util.Optional;
import quietband.spectrum.LogCurve;

/**
 * What is asked.
 *
 * @param fromHz         lower edge of the band, Hz
 * @param toHz           upper edge of the band, Hz
 * @param byVector       judge the vector sum over axes instead of the worst axis
 * @param residual       limit of residual sensitivity, 1/g over Hz; empty when none or derived
 * @param fromPhaseNoise whether the residual limit is derived from the phase-noise limit
 * @param phaseNoise     limit at the output, dBc/Hz over offset in Hz
 * @param tones          limit of the sidebands of tones at the output, dBc over Hz
 * @param jitter         limit of the phase jitter
 * @param yield          required share of good units
 */
public record Requirement(double fromHz, double toHz, boolean byVector, Optional<LogCurve> residual,
                          boolean fromPhaseNoise, Optional<LogCurve> phaseNoise, Optional<LogCurve> tones,
                          Optional<Jitter> jitter, Optional<Yield> yield) {

    /** Nothing asked; 10 Hz to 2 kHz. */
    public static final Requirement NONE = new Requirement(10, 2000, false, Optional.empty(), false, Optional.empty(),
        Optional.empty(), Optional.empty(), Optional.empty());

    /** Limit of the rms phase in rad, integrated between two offsets in Hz. */
    public record Jitter(double limitRad, double fromHz, double toHz) { }

    /** Share of units that must meet, and confidence of the claim; both between 0 and 1. */
    public record Yield(double share, double confidence) { }
}
