package quietband.motion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import quietband.model.Design;
import quietband.model.Resonance;
import quietband.model.Vec;

/** The resonator: sum over axes of G_i times the acceleration behind its support, fractional frequency. */
final class Crystal {

    private final List<double[]> rows;
    private final Chain[] support;
    private final Signal behind = new Signal();
    private final Signal y = new Signal();
    private final Track plain = new Track();
    private double lastValue;
    private double lastSlope;
    private double older;
    private double olderSlope;

    Crystal(Design design, double step) {
        rows = rows(design);
        support = new Chain[rows.size()];
        for (int i = 0; i < support.length; i++) {
            // a single row stands for all axes: any axis that counts has the right support
            int axis = rows.get(i)[0] != 0 ? 0 : rows.get(i)[1] != 0 ? 1 : 2;
            support[i] = Chain.support(design.oscillator().resonator().supportResonance(), axis, step);
        }
    }

    /**
     * What is taken of the accelerations at the resonator, 1/g: one row where all axes that count have the same support, else
     * one for each.
     */
    static List<double[]> rows(Design design) {
        Vec g = design.oscillator().resonator().mountedSensitivityPerG();
        Resonance r = design.oscillator().resonator().supportResonance();
        List<double[]> rows = new ArrayList<>();
        int first = -1;
        boolean same = true;
        for (int i = 0; i < 3; i++) {
            if (g.get(i) != 0) {
                first = first < 0 ? i : first;
                same &= Channel.same(r, i, first);
                double[] row = new double[3];
                row[i] = g.get(i);
                rows.add(row);
            }
        }
        return same && rows.size() > 1 ? List.of(g.toArray()) : rows;
    }

    /** Steps through a block of one signal per row, fractional frequency. */
    void run(Signal[] input, int n) {
        Arrays.fill(y.value, 0, n + 1, 0);
        Arrays.fill(y.slope, 0, n + 1, 0);
        for (int i = 0; i < support.length; i++) {
            support[i].run(input[i], behind, n);
            for (int k = 0; k <= n; k++) {
                y.value[k] += behind.value[k];
                y.slope[k] += behind.slope[k];
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

    /** Starts in the periodic state under sinusoids, one per row. */
    void settle(Phasor[] input, double theta) {
        for (int i = 0; i < support.length; i++) {
            support[i].settle(input[i], theta);
        }
    }
}
