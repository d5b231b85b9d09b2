package quietband.tolerance.judge;

import quietband.demand.ResidualDemand;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.tolerance.kernel.BlockedGrid;
import quietband.tolerance.kernel.FrequencyBlock;
import quietband.tolerance.kernel.UnitPlatformSolver;
import quietband.tolerance.kernel.UnitResponse;

/**
 * The worst points of one unit in one condition on a set of frequencies: residual over its limit, and phase noise over its own.
 * One object serves one thread.
 */
final class UnitWorstPoint {

    private static final double LEAST = 1e-30;

    private final ResidualDemand demand;
    private final boolean derived;
    private final boolean noiseAsked;
    private final boolean together;
    private final int stack;
    private final int[] driven;
    private final Design base;
    private final JitterSum jitter;
    private final WorstSideband tones;
    private final NoiseFloor noise = new NoiseFloor();
    private final double[] floor = new double[UnitPlatformSolver.BLOCK];
    private final double[][] scale = new double[3][UnitPlatformSolver.BLOCK];
    private double[][] over = new double[0][];
    private double[][] noiseOver = new double[0][];
    /** Worst residual, as power over the limit's (without one: over 1 (ppb/g)^2). */
    final PeakInterpolation residual = new PeakInterpolation();
    /** Worst phase noise over its limit; unused when none is stated. */
    final PeakInterpolation phaseNoise = new PeakInterpolation();

    /**
     * For one condition.
     *
     * @param open bits of what is looked at beside the residual, if it is asked
     */
    UnitWorstPoint(JudgedCondition condition, int open) {
        base = condition.base;
        boolean phaseNoiseToo = (open & RequirementKind.PHASE_NOISE.bit()) != 0;
        boolean jitterToo = (open & RequirementKind.JITTER.bit()) != 0;
        tones = condition.tonesBeside && (open & RequirementKind.TONES.bit()) != 0 ? new WorstSideband() : null;
        jitter = jitterToo && condition.inBand ? new JitterSum(base, condition.nodes) : null;
        demand = new ResidualDemand(base);
        derived = base.requirement().fromPhaseNoise();
        driven = Axis.ALL.stream().filter(base.vibration().axes()::contains).mapToInt(Axis::ordinal).toArray();
        noiseAsked = phaseNoiseToo && base.requirement().phaseNoise().isPresent() && driven.length > 0;
        together = base.vibration().together();
        stack = Stack.fullest(base).ordinal();
    }

    /** Bits of what is looked at here, or never asked again. */
    int covers() {
        return RequirementKind.RESIDUAL.bit() | RequirementKind.PHASE_NOISE.bit() | (jitter == null ? 0 : RequirementKind.JITTER.bit())
            | (tones == null ? 0 : RequirementKind.TONES.bit());
    }

    /** Whether phase noise is looked at. */
    boolean noiseAsked() {
        return noiseAsked;
    }

    void fill(Design unit, UnitResponse response) {
        residual.clear();
        phaseNoise.clear();
        if (tones != null) {
            tones.clear();
        }
        if (noiseAsked || derived || jitter != null) {
            noise.fill(unit, response.path.weights());
        }
    }

    /** Looks at every node, and keeps what is worse than what was found before. */
    void run(UnitResponse response, BlockedGrid nodes) {
        int n = nodes.size();
        if (over.length == 0 || over[0].length < n) {
            over = new double[demand.rows()][n];
            noiseOver = new double[together ? 1 : driven.length][n];
        }
        if (jitter != null) {
            jitter.clear();
        }
        int at = 0;
        for (FrequencyBlock b : nodes.blocks) {
            response.residual(b, false);
            take(response, b, at);
            if (tones != null) {
                tones.take(base, b, b.n, b.lanes, response.power[stack]);
            }
            at += b.n;
        }
        residual.find(nodes.x, over, nodes.kink, n);
        if (noiseAsked) {
            phaseNoise.find(nodes.x, noiseOver, nodes.kink, n);
        }
    }

    /** Takes in a block whose powers the response holds. */
    private void take(UnitResponse response, FrequencyBlock b, int at) {
        double[][] power = response.power[stack];
        if (noiseAsked || derived || jitter != null) {
            noise.at(b, floor);
        }
        double[][] by = derived ? allowed(b) : b.overLimit;
        for (int row = 0; row < over.length; row++) {
            for (int t = 0; t < b.n; t++) {
                over[row][at + t] = Math.max(LEAST, demand.squared(row, power[0][t], power[1][t], power[2][t]) * by[row][t]);
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

    /** Worst sideband over its limit beside the nodes looked at, as a ratio of amplitudes; NaN when tones are not looked at here. */
    double tonesShare() {
        return tones == null ? Double.NaN : tones.share();
    }

    private void noise(double[][] power, FrequencyBlock b, int at) {
        for (int k = 0; k < noiseOver.length; k++) {
            double[] into = noiseOver[k];
            for (int t = 0; t < b.n; t++) {
                into[at + t] = floor[t] * b.overNoise[t];
            }
            if (!together) {
                addDriven(into, at, power[driven[k]], b.drivenOverNoise[driven[k]], b.n);
                continue;
            }
            for (int j : driven) {
                addDriven(into, at, power[j], b.drivenOverNoise[j], b.n);
            }
        }
    }

    private static void addDriven(double[] into, int at, double[] power, double[] scale, int n) {
        for (int t = 0; t < n; t++) {
            into[at + t] += power[t] * scale[t];
        }
    }

    /** One over the squares of the residual that would just meet the phase-noise limit with this unit's own floor. */
    private double[][] allowed(FrequencyBlock b) {
        for (int t = 0; t < b.n; t++) {
            double left = b.noiseLimit == null ? Double.POSITIVE_INFINITY : b.noiseLimit[t] - floor[t];
            double all = 0;
            for (int j : driven) {
                all += b.driven[j][t];
            }
            for (int j = 0; j < 3; j++) {
                scale[j][t] = 0;
            }
            for (int j : driven) {
                double drive = together ? all : b.driven[j][t];
                scale[j][t] = left <= 0 ? FrequencyBlock.MOST : Math.max(0, drive / left);
            }
            if (over.length == 1) {
                scale[0][t] = Math.max(scale[0][t], Math.max(scale[1][t], scale[2][t]));
            }
        }
        return scale;
    }

    /** The name of a residual curve. */
    String axis() {
        return demand.name(residual.curve);
    }
}
