package quietband.demand;

import quietband.model.Design;
import quietband.model.Vibration.Tone;
import quietband.oscillator.Sidebands;

/**
 * What a design's tones make at its output, and what of it is asked: sidebands of a modulation index beta = |y| A f0/f
 * ({@link Sidebands}), f0 the output frequency.
 */
public record ToneDemand(Design design) {

    /**
     * Modulation index at the output, rad.
     *
     * @param perG |y| along the tone's axis at its frequency, 1/g
     */
    public double index(Tone tone, double perG) {
        return Sidebands.index(perG, tone.peakG(), design.oscillator().outputHz(), tone.frequencyHz());
    }

    /** The limit at a tone's frequency, dBc; NaN when none is stated. */
    public double limitDbc(Tone tone) {
        return design.requirement().tones().map(l -> l.at(tone.frequencyHz())).orElse(Double.NaN);
    }

    /** How far a tone's sideband is above its limit, dB; minus infinity without sensitivity, NaN without a limit. */
    public double overDb(Tone tone, double perG) {
        return Sidebands.levelDbc(index(tone, perG)) - limitDbc(tone);
    }
}
