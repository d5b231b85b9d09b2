package quietband.tolerance.judge;

import java.util.Arrays;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Requirement;
import quietband.oscillator.Sidebands;
import quietband.spectrum.LogCurve;
import quietband.tolerance.kernel.BlockedGrid;
import quietband.tolerance.kernel.FrequencyBlock;

/** Integrated phase noise of a unit, summed up on nodes that are looked at anyway, by cubics in log f. */
final class JitterSum {

    private final double[] floorWeight;
    private final double[][] drivenWeight = new double[3][];
    private final boolean together;
    private final int[] driven;
    private final double[] part = new double[3];
    private double rest;

    /** For a design whose jitter is asked between nodes. */
    JitterSum(Design design, BlockedGrid nodes) {
        Requirement.Jitter asked = design.requirement().jitter().orElseThrow();
        floorWeight = nodes.integral(asked.fromHz(), asked.toHz());
        for (Axis axis : Axis.ALL) {
            double[] f = design.vibration().drive(axis).map(LogCurve::frequencies).orElse(new double[] {0, 0});
            drivenWeight[axis.ordinal()] = nodes.integral(Math.max(asked.fromHz(), f[0]), Math.min(asked.toHz(), f[f.length - 1]));
        }
        together = design.vibration().together();
        driven = Axis.ALL.stream().filter(design.vibration().axes()::contains).mapToInt(Axis::ordinal).toArray();
    }

    void clear() {
        Arrays.fill(part, 0);
        rest = 0;
    }

    /** Adds a block: |y_j|^2 per axis and the floor; {@code at} is its place among the nodes. */
    void add(FrequencyBlock b, int at, double[][] power, double[] floor) {
        for (int t = 0; t < b.n; t++) {
            for (int j : driven) {
                part[j] += b.driven[j][t] * power[j][t] * drivenWeight[j][at + t];
            }
            rest += floor[t] * floorWeight[at + t];
        }
    }

    /** The sum, rad rms: the worst driven axis, or all together. */
    double rad() {
        double most = 0;
        double sum = 0;
        for (int j : driven) {
            most = Math.max(most, part[j]);
            sum += part[j];
        }
        return driven.length == 0 ? 0 : Sidebands.jitterRad(rest + (together ? sum : most));
    }
}
