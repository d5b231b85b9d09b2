package quietband.tolerance.judge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import quietband.demand.Decibels;
import quietband.model.Design;
import quietband.model.quantity.Quantities;
import quietband.tolerance.draw.ImpossibleUnitException;
import quietband.tolerance.draw.ToleranceDraws;
import quietband.tolerance.draw.UnitStream;
import quietband.tolerance.kernel.UnitResponse;

/**
 * Which requirements can decide at all. Each but the residual is worked out for a few units first; where their shares of the limit, on
 * a logarithmic scale, lie more than ten standard deviations (and three times their whole range) on one side of it, no unit is
 * asked again.
 *
 * @param open   bits of what every unit is asked
 * @param failed bits of what every unit fails
 * @param notes  what was settled, in words
 */
record DecidingRequirements(int open, int failed, List<String> notes) {

    private static final int UNITS = 8;
    private static final double DEVIATIONS = 10;
    private static final double RANGES = 3;
    private static final double LEAST = 0.01;

    DecidingRequirements {
        notes = List.copyOf(notes);
    }

    /** Asks nothing but the residual. */
    static final DecidingRequirements RESIDUAL_ONLY = new DecidingRequirements(0, 0, List.of());

    /** Settles what can be settled in a condition. */
    static DecidingRequirements of(JudgedCondition condition, Design nominal, ToleranceDraws scatter, long seed) {
        double[][] shares = new double[UNITS][];
        DecidingRequirements all = new DecidingRequirements(RequirementKind.PHASE_NOISE.bit(), 0, List.of());
        UnitJudge judge = new UnitJudge(condition, all);
        RequirementShares swings = new RequirementShares(condition);
        UnitResponse response = new UnitResponse(condition.base, condition.varied,
            Math.max(condition.base.requirement().toHz(), swings.highest()));
        for (int u = 0; u < UNITS; u++) {
            shares[u] = shares(condition, nominal, scatter, seed, u, judge, swings, response);
        }
        int open = 0;
        int failed = 0;
        List<String> notes = new ArrayList<>();
        for (RequirementKind a : RequirementKind.values()) {
            double[] s = Arrays.stream(shares).mapToDouble(v -> v[a.ordinal()]).toArray();
            if (Double.isNaN(s[0])) {
                continue;
            }
            int side = side(s);
            open |= side == 0 ? a.bit() : 0;
            failed |= side > 0 ? a.bit() : 0;
            if (side != 0) {
                notes.add(a.key() + (side > 0 ? " fails" : " holds") + " in " + condition.name + " for every unit: the nearest of "
                    + UNITS + " uses " + Math.round(100 * (side > 0 ? min(s) : max(s))) + " % of its limit");
            }
        }
        return new DecidingRequirements(open, failed, notes);
    }

    /** Which side of the limit all units are on: -1 within, 1 beyond, 0 open. */
    private static int side(double[] shares) {
        double[] logs = Arrays.stream(shares).map(s -> StrictMath.log(Math.max(s, 1e-12))).toArray();
        double mean = Arrays.stream(logs).average().orElse(0);
        double spread = Math.sqrt(Arrays.stream(logs).map(l -> (l - mean) * (l - mean)).sum() / (logs.length - 1));
        double away = Math.max(Math.max(DEVIATIONS * spread, RANGES * (max(logs) - min(logs))), LEAST);
        return mean + away < 0 ? -1 : mean - away > 0 ? 1 : 0;
    }

    private static double[] shares(JudgedCondition condition, Design nominal, ToleranceDraws scatter, long seed, int index, UnitJudge judge,
                                   RequirementShares swings, UnitResponse response) {
        for (int attempt = 0; ; attempt++) {
            Quantities drawn = index == 0 && attempt == 0 ? nominal.quantities()
                : scatter.at(normals(scatter, seed, index, attempt));
            try {
                if (scatter.possible(drawn) || index == 0 && attempt == 0) {
                    Design unit = condition.unit(nominal, drawn);
                    response.fill(unit);
                    // of a shock's travel the design has all, the others their first swing: as good where the swing dies away
                    double[] shares = swings.shares(unit, response, !condition.varied.shared(), -1, index > 0);
                    judge.margin(unit);
                    shares[RequirementKind.PHASE_NOISE.ordinal()] = judge.noiseAsked()
                        ? Decibels.amplitude(-judge.noiseMarginDb()) : Double.NaN;
                    return shares;
                }
            } catch (ImpossibleUnitException e) {
                // drawn again below
            }
            if (attempt > ImpossibleUnitException.MOST_ATTEMPTS) {
                throw ImpossibleUnitException.hopeless();
            }
        }
    }

    private static double[] normals(ToleranceDraws scatter, long seed, int index, int attempt) {
        double[] z = new double[scatter.size()];
        UnitStream.normals(seed, UnitStream.Purpose.SCREEN, attempt, index, z);
        return z;
    }

    private static double max(double[] v) {
        return Arrays.stream(v).max().orElse(0);
    }

    private static double min(double[] v) {
        return Arrays.stream(v).min().orElse(0);
    }
}
