package quietband.tolerance.judge;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import quietband.demand.RequirementResult;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.model.Vibration.Tone;
import quietband.platform.Assembly;
import quietband.response.GridSeeds;
import quietband.response.travel.Travel;
import quietband.response.verdict.RangeUse;
import quietband.spectrum.LogCurve;
import quietband.tolerance.kernel.BlockedGrid;
import quietband.tolerance.kernel.FrequencyBlock;
import quietband.tolerance.kernel.UnitPlatformSolver;
import quietband.tolerance.kernel.UnitResponse;

/**
 * What a unit is asked beside residual and phase noise: jitter, tones, travel, sensor range and tuning swing, each as its share of
 * the limit. Integrals over frequency are those of cubics in log f on a grid that is dense enough for the design's resonances. One
 * object serves one thread.
 */
final class RequirementShares {

    private final Design base;
    private final BlockedGrid nodes;
    private final BlockedGrid tones;
    private final JitterSum sum;
    private final double[][] drivenWeight = new double[3][];
    private final MotionAt at = new MotionAt();
    private final NoiseFloor floor = new NoiseFloor();
    private final WorstSideband tone = new WorstSideband();
    private final double[] floorAt = new double[UnitPlatformSolver.BLOCK];

    RequirementShares(JudgedCondition condition) {
        base = condition.base;
        int perDecade = condition.swingPerDecade;
        Requirement r = base.requirement();
        double from = r.jitter().map(Requirement.Jitter::fromHz).orElse(r.fromHz());
        double to = r.jitter().map(Requirement.Jitter::toHz).orElse(r.toHz());
        TreeSet<Double> grid = new TreeSet<>(List.of(from, to));
        for (Axis axis : Axis.ALL) {
            base.vibration().drive(axis).map(LogCurve::frequencies).ifPresent(f -> {
                grid.add(f[0]);
                grid.add(f[f.length - 1]);
            });
        }
        for (double f : new GridSeeds(base, null).between(grid.first(), grid.last(), perDecade)) {
            grid.add(f);
        }
        nodes = new BlockedGrid(grid.stream().mapToDouble(Double::doubleValue).toArray(), base);
        sum = r.jitter().isPresent() ? new JitterSum(base, nodes) : null;
        for (Axis axis : Axis.ALL) {
            int j = axis.ordinal();
            double[] f = base.vibration().drive(axis).map(LogCurve::frequencies).orElse(new double[] {0, 0});
            drivenWeight[j] = nodes.integral(f[0], f[f.length - 1]);
        }
        double[] lines = base.vibration().tones().stream().mapToDouble(Tone::frequencyHz).distinct().sorted().toArray();
        tones = lines.length == 0 ? null : new BlockedGrid(lines, base);
    }

    /** Highest frequency looked at, Hz. */
    double highest() {
        double top = nodes.f[nodes.size() - 1];
        return tones == null ? top : Math.max(top, tones.f[tones.size() - 1]);
    }

    /** Bits of what needs the motion of the platform, beyond the residual. */
    static final int MOVING = RequirementKind.TRAVEL.bit() | RequirementKind.SENSOR_RANGE.bit() | RequirementKind.TUNING_SWING.bit();

    /**
     * Shares of their limits, by {@link RequirementKind}; NaN where nothing is stated or wanted.
     *
     * @param response has taken up the unit
     * @param shared   whether the units share the blocks
     * @param wanted   bits of what is to be worked out
     */
    double[] shares(Design unit, UnitResponse response, boolean shared, int wanted) {
        return shares(unit, response, shared, wanted, false);
    }

    /** The same; of a shock's travel the first swing alone if that is enough. */
    double[] shares(Design unit, UnitResponse response, boolean shared, int wanted, boolean firstSwing) {
        double[] shares = new double[RequirementKind.values().length];
        Arrays.fill(shares, Double.NaN);
        BlockedGrid over = shared ? nodes : new BlockedGrid(nodes.f, unit);
        BlockedGrid lines = shared || tones == null ? tones : new BlockedGrid(tones.f, unit);
        if (tones != null && unit.requirement().tones().isPresent() && (wanted & RequirementKind.TONES.bit()) != 0) {
            shares[RequirementKind.TONES.ordinal()] = sidebands(unit, response, lines);
        }
        if (unit.requirement().jitter().isPresent() && (wanted & RequirementKind.JITTER.bit()) != 0) {
            shares[RequirementKind.JITTER.ordinal()] = jitter(unit, response, over) / unit.requirement().jitter().get().limitRad();
        }
        if ((wanted & MOVING) != 0) {
            at.clear(unit);
            integrate(unit, response, over);
            if (lines != null) {
                peaks(unit, response, lines);
            }
            unit.cancellation().ifPresent(c -> {
                RangeUse use = at.ranges(unit);
                shares[RequirementKind.SENSOR_RANGE.ordinal()] = share(use.sensor(c));
                shares[RequirementKind.TUNING_SWING.ordinal()] = share(use.tuning(c));
            });
            if ((wanted & RequirementKind.TRAVEL.bit()) != 0) {
                unit.platform().ifPresent(p -> shares[RequirementKind.TRAVEL.ordinal()] = share(p.clearance()
                    .map(clear -> Travel.of(unit, new Assembly(p), at.random(), firstSwing).use(clear))));
            }
        }
        return shares;
    }

    private static double share(Optional<RequirementResult> use) {
        return use.map(RequirementResult::usedShare).orElse(Double.NaN);
    }

    private double jitter(Design unit, UnitResponse response, BlockedGrid over) {
        floor.fill(unit, response.path.weights());
        sum.clear();
        int from = 0;
        for (FrequencyBlock b : over.blocks) {
            response.residual(b, false);
            floor.at(b, floorAt);
            sum.add(b, from, response.power[Stack.fullest(base).ordinal()], floorAt);
            from += b.n;
        }
        return sum.rad();
    }

    /** Worst sideband of a tone over its limit, as a ratio of amplitudes. */
    private double sidebands(Design unit, UnitResponse response, BlockedGrid lines) {
        tone.clear();
        for (FrequencyBlock b : lines.blocks) {
            response.residual(b, false);
            tone.take(unit, b, 0, b.n, response.power[Stack.fullest(base).ordinal()]);
        }
        return tone.share();
    }

    private void integrate(Design unit, UnitResponse response, BlockedGrid over) {
        int from = 0;
        for (FrequencyBlock b : over.blocks) {
            at.take(unit, response, b);
            for (int t = 0; t < b.n; t++) {
                for (int j = 0; j < 3; j++) {
                    at.add(t, j, b.density[j][t] * drivenWeight[j][from + t]);
                }
            }
            from += b.n;
        }
    }

    private void peaks(Design unit, UnitResponse response, BlockedGrid lines) {
        for (FrequencyBlock b : lines.blocks) {
            at.take(unit, response, b);
            for (Tone line : unit.vibration().tones()) {
                for (int t = 0; t < b.n; t++) {
                    if (b.f[t] == line.frequencyHz()) {
                        for (Axis axis : line.axes()) {
                            at.addTone(t, axis.ordinal(), line.peakG());
                        }
                    }
                }
            }
        }
    }
}
