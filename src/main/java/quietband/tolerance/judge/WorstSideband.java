package quietband.tolerance.judge;

import java.util.List;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Vibration.Tone;
import quietband.oscillator.Sidebands;
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
        for (Tone tone : unit.vibration().tones()) {
            for (int t = from; t < to; t++) {
                if (b.f[t] == tone.frequencyHz()) {
                    worstDb = Math.max(worstDb, over(unit, tone, power, t));
                }
            }
        }
    }

    private static double over(Design unit, Tone tone, double[][] power, int t) {
        double limit = unit.requirement().tones().orElseThrow().at(tone.frequencyHz());
        double worst = Double.NEGATIVE_INFINITY;
        for (Axis axis : tone.axis().map(List::of).orElse(Axis.ALL)) {
            double beta = Sidebands.index(Math.sqrt(power[axis.ordinal()][t]), tone.peakG(), unit.oscillator().outputHz(),
                tone.frequencyHz());
            worst = Math.max(worst, Sidebands.levelDbc(beta) - limit);
        }
        return worst;
    }

    /** As a ratio of amplitudes. */
    double share() {
        return StrictMath.pow(10, worstDb / 20);
    }
}
