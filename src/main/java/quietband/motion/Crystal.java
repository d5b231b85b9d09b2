package quietband.motion;

import quietband.model.Design;
import quietband.model.Vec;

/** The resonator: sum over axes of G_i times the acceleration behind its support, fractional frequency. */
final class Crystal {

    private final Vec g;
    private final Chain[] support = new Chain[3];
    private final Signal behind = new Signal();
    private final Signal y = new Signal();
    private final Track plain = new Track();
    private double lastValue;
    private double lastSlope;

    Crystal(Design design, Vec mountedPerG, double step) {
        g = mountedPerG;
        for (int i = 0; i < 3; i++) {
            support[i] = Chain.support(design.oscillator().resonator().supportResonance(), i, step);
        }
    }

    /** Steps through a block of the acceleration at the resonator. */
    void run(Signal[] acceleration, int n) {
        java.util.Arrays.fill(y.value, 0, n + 1, 0);
        java.util.Arrays.fill(y.slope, 0, n + 1, 0);
        for (int i = 0; i < 3; i++) {
            double gi = g.get(i);
            if (gi != 0) {
                support[i].run(acceleration[i], behind, n);
                for (int k = 0; k <= n; k++) {
                    y.value[k] += gi * behind.value[k];
                    y.slope[k] += gi * behind.slope[k];
                }
            }
        }
        plain.push(y.value, n);
    }

    /** The fractional frequency at the grid's points. */
    Track plain() {
        return plain;
    }

    /** Adds the block's points to a track, as they are or averaged as a staircase is (then one point late). */
    void give(Track into, int n, boolean averaged) {
        if (!averaged) {
            into.push(y.value, n);
            return;
        }
        boolean first = plain.end() == n;
        for (int k = first ? 0 : -1; k < n - 1; k++) {
            // point k + 1 completes point k; before the first block the signal goes on backwards as a straight line
            double before = k > 0 ? y.value[k - 1] : k == 0 ? (first ? y.value[0] - y.slope[0] : lastValue) : older;
            double beforeSlope = k > 0 ? y.slope[k - 1] : k == 0 ? (first ? y.slope[0] : lastSlope) : olderSlope;
            double here = k >= 0 ? y.value[k] : lastValue;
            into.push(Averages.of(before, here, y.value[k + 1], beforeSlope, y.slope[k + 1]));
        }
        older = n > 1 ? y.value[n - 2] : lastValue;
        olderSlope = n > 1 ? y.slope[n - 2] : lastSlope;
        lastValue = y.value[n - 1];
        lastSlope = y.slope[n - 1];
    }

    private double older;
    private double olderSlope;

    /** Starts in the periodic state under sinusoidal accelerations. */
    void settle(Phasor[] acceleration, double theta) {
        for (int i = 0; i < 3; i++) {
            support[i].settle(acceleration[i], theta);
        }
    }
}
