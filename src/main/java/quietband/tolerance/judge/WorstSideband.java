package quietband.tolerance.judge;

import java.util.List;
import quietband.demand.Decibels;
import quietband.demand.ToneDemand;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Vibration.Tone;
import quietband.tolerance.kernel.FrequencyBlock;

/** The worst sideband of a design's or unit's tones over its limit. One object serves one thread. */
final class WorstSideband {

    private double worstDb = Double.NEGATIVE_INFINITY;

    /** Forgets what was taken in. */
    void clear() {
        worstDb = Double.NEGATIVE_INFINITY;
    }

    /**
     * Takes in the tones that are on some frequencies of a block.
     *
     * @param from  the first of them
     * @param power |y_j|^2 per axis
     */
    void take(Design unit, FrequencyBlock b, int from, int to, double[][] power) {
        ToneDemand demand = new ToneDemand(unit);
        for (Tone tone : unit.vibration().tones()) {
            for (int t = from; t < to; t++) {
                for (Axis axis : b.f[t] == tone.frequencyHz() ? tone.axes() : List.<Axis>of()) {
                    worstDb = Math.max(worstDb, demand.overDb(tone, Math.sqrt(power[axis.ordinal()][t])));
                }
            }
        }
    }

    /** As a ratio of amplitudes. */
    double share() {
        return Decibels.amplitude(worstDb);
    }
}
