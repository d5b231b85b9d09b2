package quietband.tolerance.judge;

import java.util.Arrays;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Requirement;
import quietband.oscillator.Sidebands;
import quietband.spectrum.LogCurve;
import quietband.tolerance.kernel.BlockedGrid;
import quietband.tolerance.kernel.FrequencyBlock;
import quietband.tolerance.kernel.UnitPlatformSolver;

/** Integrated phase noise of a unit, summed up on nodes that are looked at anyway, by cubics in log f. */
final class JitterSum {

    private static final double[] ONES = new double[UnitPlatformSolver.BLOCK];

    static {
        Arrays.fill(ONES, 1);
    }

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
        part[0] = 0;
        part[1] = 0;
        part[2] = 0;
        rest = 0;
    }

    /** Adds a block: |y_j|^2 per axis and the floor; {@code at} is its place among the nodes. */
    void add(FrequencyBlock b, int at, double[][] power, double[] floor) {
        for (int j : driven) {
            part[j] += sum(b.driven[j], power[j], drivenWeight[j], at, b.n);
        }
        rest += sum(floor, ONES, floorWeight, at, b.n);
    }

    /** Four sums at once: none waits for the other. */
    private static double sum(double[] x, double[] y, double[] weight, int at, int n) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int t = 0;
        for (; t + 3 < n; t += 4) {
            a += x[t] * y[t] * weight[at + t];
            b += x[t + 1] * y[t + 1] * weight[at + t + 1];
            c += x[t + 2] * y[t + 2] * weight[at + t + 2];
            d += x[t + 3] * y[t + 3] * weight[at + t + 3];
        }
        for (; t < n; t++) {
            a += x[t] * y[t] * weight[at + t];
        }
        return a + b + (c + d);
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
