package quietband.tolerance.judge;

import quietband.cancellation.NoiseSources;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.tolerance.kernel.FrequencyBlock;

/** Phase noise of one unit without vibration, in its fullest stack, as power ratio per Hz. */
final class NoiseFloor {

    private NoiseSources sources;

    void fill(Design unit, Vec weights) {
        sources = unit.cancellation().filter(c -> Stack.fullest(unit).corrected()).map(c -> new NoiseSources(c, weights)).orElse(null);
    }

    /** Writes the floor at every frequency of a block, whose powers are phase noise already. */
    void at(FrequencyBlock b, double[] floor) {
        System.arraycopy(b.staticNoise, 0, floor, 0, b.n);
        if (sources != null) {
            sources.addTo(floor, b.after2, b.digital2, b.port2, b.n);
        }
    }
}
