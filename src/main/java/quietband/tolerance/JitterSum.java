package quietband.tolerance;

import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Requirement;
import quietband.spectrum.LogCurve;

/** Integrated phase noise of a unit, summed up on nodes that are looked at anyway, by trapezoids in log f. */
final class JitterSum {

    private final double[] floorWeight;
    private final double[][] drivenWeight = new double[3][];
    private final boolean together;
    private final int[] driven;
    private final double[] part = new double[3];
    private double rest;

    /** For a design whose jitter is asked between nodes. */
    JitterSum(Design design, Nodes nodes) {
        Requirement.Jitter asked = design.requirement().jitter().orElseThrow();
        floorWeight = nodes.trapezoid(asked.fromHz(), asked.toHz());
        for (Axis axis : Axis.ALL) {
            double[] f = design.vibration().drive(axis).map(LogCurve::frequencies).orElse(new double[] {0, 0});
            drivenWeight[axis.ordinal()] = nodes.trapezoid(Math.max(asked.fromHz(), f[0]), Math.min(asked.toHz(), f[f.length - 1]));
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
    void add(Block b, int at, double[][] power, double[] floor) {
        for (int j : driven) {
            for (int t = 0; t < b.n; t++) {
                part[j] += b.toPhase[t] * b.density[j][t] * drivenWeight[j][at + t] * power[j][t];
            }
        }
        for (int t = 0; t < b.n; t++) {
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
        return driven.length == 0 ? 0 : Math.sqrt(2 * (rest + (together ? sum : most)));
    }
}
