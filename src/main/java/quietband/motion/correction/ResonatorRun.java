package quietband.motion.correction;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import quietband.model.Design;
import quietband.model.Resonance;
import quietband.model.Vec;
import quietband.motion.signal.BlockSignal;
import quietband.motion.signal.GridSinusoid;
import quietband.motion.signal.SignalStream;
import quietband.motion.signal.TriangleAverage;

/** The resonator: sum over axes of G_i times the acceleration behind its support, fractional frequency. */
public final class ResonatorRun {

    private final List<double[]> rows;
    private final AnalogChain[] support;
    private final BlockSignal behind = new BlockSignal();
    private final BlockSignal y = new BlockSignal();
    private final SignalStream plain = new SignalStream();
    private double lastValue;
    private double lastSlope;
    private double older;
    private double olderSlope;

    public ResonatorRun(Design design, double step) {
        rows = rows(design);
        support = new AnalogChain[rows.size()];
        for (int i = 0; i < support.length; i++) {
            // a single row stands for all axes: any axis that counts has the right support
            int axis = rows.get(i)[0] != 0 ? 0 : rows.get(i)[1] != 0 ? 1 : 2;
            support[i] = AnalogChain.support(design.oscillator().resonator().supportResonance(), axis, step);
        }
    }

    /**
     * What is taken of the accelerations at the resonator, 1/g: one row where all axes that count have the same support, else
     * one for each.
     */
    public static List<double[]> rows(Design design) {
        Vec g = design.oscillator().resonator().mountedSensitivityPerG();
        Resonance r = design.oscillator().resonator().supportResonance();
        List<double[]> rows = new ArrayList<>();
        int first = -1;
        boolean same = true;
        for (int i = 0; i < 3; i++) {
            if (g.get(i) != 0) {
                first = first < 0 ? i : first;
                same &= SensorChannel.same(r, i, first);
                double[] row = new double[3];
                row[i] = g.get(i);
                rows.add(row);
            }
        }
        return same && rows.size() > 1 ? List.of(g.toArray()) : rows;
    }

    /** Steps through a block of one signal per row, fractional frequency. */
    public void run(BlockSignal[] input, int n) {
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
    public SignalStream plain() {
        return plain;
    }

    /** Adds the block's points to a track, as they are or averaged as a staircase is (then one point late). */
    public void give(SignalStream into, int n, boolean averaged) {
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
            into.push(TriangleAverage.of(before, here, y.value[k + 1], beforeSlope, y.slope[k + 1]));
        }
        older = n > 1 ? y.value[n - 2] : lastValue;
        olderSlope = n > 1 ? y.slope[n - 2] : lastSlope;
        lastValue = y.value[n - 1];
        lastSlope = y.slope[n - 1];
    }

    /** Starts in the periodic state under sinusoids, one per row. */
    public void settle(GridSinusoid[] input, double theta) {
        for (int i = 0; i < support.length; i++) {
            support[i].settle(input[i], theta);
        }
    }
}
