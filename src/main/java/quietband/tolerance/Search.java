package quietband.tolerance;

import java.util.List;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;

/**
 * The worst points of one unit in one condition on a set of frequencies: residual over its limit, and phase noise over its own.
 * One object serves one thread.
 */
final class Search {

    private final boolean vector;
    private final boolean derived;
    private final boolean noiseAsked;
    private final boolean together;
    private final int stack;
    private final int[] driven;
    private final JitterSum jitter;
    private final NoiseFloor noise = new NoiseFloor();
    private final double[] floor = new double[Kernel.BLOCK];
    private final double[][] limit2 = new double[3][Kernel.BLOCK];
    private double[][] over = new double[0][];
    private double[][] noiseOver = new double[0][];
    /** Worst residual, as power over the limit's (without one: over 1 (ppb/g)^2). */
    final Peaks residual = new Peaks();
    /** Worst phase noise over its limit; unused when none is asked. */
    final Peaks phaseNoise = new Peaks();

    Search(Condition condition, boolean phaseNoiseToo, boolean jitterToo) {
        Design base = condition.base;
        jitter = jitterToo && condition.inBand ? new JitterSum(base, condition.nodes) : null;
        vector = base.requirement().byVector();
        derived = base.requirement().fromPhaseNoise();
        driven = Axis.ALL.stream().filter(base.vibration().axes()::contains).mapToInt(Axis::ordinal).toArray();
        noiseAsked = phaseNoiseToo && base.requirement().phaseNoise().isPresent() && driven.length > 0;
        together = base.vibration().together();
        stack = Stack.fullest(base).ordinal();
    }

    /** Whether phase noise is looked at. */
    boolean noiseAsked() {
        return noiseAsked;
    }

    void fill(Design unit, UnitResponse response) {
        residual.clear();
        phaseNoise.clear();
        if (noiseAsked || derived || jitter != null) {
            noise.fill(unit, response.path.weights());
        }
    }

    /** Looks at every node, and keeps what is worse than what was found before. */
    void run(UnitResponse response, Nodes nodes) {
        int n = nodes.size();
        if (over.length == 0 || over[0].length < n) {
            over = new double[vector ? 1 : 3][n];
            noiseOver = new double[together ? 1 : driven.length][n];
        }
        if (jitter != null) {
            jitter.clear();
        }
        int at = 0;
        for (Block b : nodes.blocks) {
            response.residual(b, false);
            take(response, b, at);
            at += b.n;
        }
        residual.find(nodes.x, over, nodes.kink, n);
        if (noiseAsked) {
            phaseNoise.find(nodes.x, noiseOver, nodes.kink, n);
        }
    }

    /** Takes in a block whose powers the response holds. */
    private void take(UnitResponse response, Block b, int at) {
        double[][] power = response.power[stack];
        if (noiseAsked || derived || jitter != null) {
            noise.at(b, floor);
        }
        double[][] limits = derived ? allowed(b) : b.limit2;
        if (vector) {
            for (int t = 0; t < b.n; t++) {
                double least = limits == null ? 1e-18 : limits[0][t];
                over[0][at + t] = ratio(power[0][t] + power[1][t] + power[2][t], least);
            }
        } else {
            for (int j = 0; j < 3; j++) {
                for (int t = 0; t < b.n; t++) {
                    over[j][at + t] = ratio(power[j][t], limits == null ? 1e-18 : limits[j][t]);
                }
            }
        }
        if (noiseAsked) {
            noise(power, b, at);
        }
        if (jitter != null) {
            jitter.add(b, at, power, floor);
        }
    }

    /** Integrated phase noise on the nodes looked at last, rad rms; NaN when it is not summed up here. */
    double jitterRad() {
        return jitter == null ? Double.NaN : jitter.rad();
    }

    private static double ratio(double power, double limit) {
        return power <= 0 || Double.isInfinite(limit) ? 1e-30 : power / limit;
    }

    private void noise(double[][] power, Block b, int at) {
        for (int k = 0; k < noiseOver.length; k++) {
            for (int t = 0; t < b.n; t++) {
                double sum = 0;
                if (together) {
                    for (int j : driven) {
                        sum += power[j][t] * b.density[j][t];
                    }
                } else {
                    sum = power[driven[k]][t] * b.density[driven[k]][t];
                }
                noiseOver[k][at + t] = (floor[t] + b.toPhase[t] * sum) / b.noiseLimit[t];
            }
        }
    }

    /** Squares of the residual that would just meet the phase-noise limit with this unit's own floor. */
    private double[][] allowed(Block b) {
        for (int t = 0; t < b.n; t++) {
            double left = b.noiseLimit == null ? Double.POSITIVE_INFINITY : b.noiseLimit[t] - floor[t];
            double all = 0;
            for (int j = 0; j < 3; j++) {
                limit2[j][t] = Double.POSITIVE_INFINITY;
            }
            for (int j : driven) {
                all += b.density[j][t];
            }
            for (int j : driven) {
                double drive = together ? all : b.density[j][t];
                limit2[j][t] = left <= 0 ? 0 : drive > 0 ? left / (b.toPhase[t] * drive) : Double.POSITIVE_INFINITY;
            }
            if (vector) {
                limit2[0][t] = Math.min(limit2[0][t], Math.min(limit2[1][t], limit2[2][t]));
            }
        }
        return limit2;
    }

    /** The name of a residual curve. */
    String axis() {
        return vector ? "vector" : List.of("x", "y", "z").get(residual.curve);
    }
}
