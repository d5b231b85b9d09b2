package quietband.tolerance.judge;

import java.util.List;
import quietband.model.Design;
import quietband.model.quantity.Quantities;
import quietband.platform.Resonances;
import quietband.tolerance.draw.ImpossibleUnitException;
import quietband.tolerance.draw.ToleranceDraws;
import quietband.tolerance.kernel.UnitResponse;

/**
 * A search grid that is as fine as a platform's resonances ask for around them and coarser away from them: at a distance d in log f
 * from a peak of half-power width w (in log f) the steps are {@code w/9 sqrt(1 + (2 d/w)^2)}, in proportion to the distance from the
 * response's poles. What units scatter by is left as fine; the trial on some units decides whether all that is enough.
 */
final class GradedGrid {

    private static final int IN_WIDTH = 9;
    /** Fewest steps in a decade, and where a table is to follow from what is found, whose notches are narrower than peaks. */
    private static final int SPARSE = 12;
    private static final int SPARSE_FOR_TABLE = 18;
    /** How far in log f a unit's resonance may lie from the design's and still find the finest steps. */
    private static final double SCATTER = 0.1;
    private static final double FINE = 1e-3;
    private static final int TRIALS = 16;
    /** Largest relative difference of a power in the trial: 0.001 dB, half of what the search is good to. */
    private static final double NEAR = 2.3e-4;

    private GradedGrid() { }

    /**
     * The grid.
     *
     * @param peaks of the platform
     * @param from  lower end, Hz
     * @param to    upper end, Hz
     * @param table whether a table is to follow from it
     */
    static double[] grid(List<Resonances.Peak> peaks, double from, double to, boolean table) {
        double widest = StrictMath.log(10) / (table ? SPARSE_FOR_TABLE : SPARSE);
        double length = StrictMath.log(to / from);
        int pieces = (int) Math.ceil(length / FINE);
        double[] sum = new double[pieces + 1];
        for (int i = 0; i < pieces; i++) {
            double f = from * StrictMath.exp((i + 0.5) / pieces * length);
            sum[i + 1] = sum[i] + length / pieces / step(peaks, f, widest);
        }
        int steps = Math.max(2, (int) Math.ceil(sum[pieces]));
        double[] grid = new double[steps + 1];
        int at = 0;
        for (int k = 0; k <= steps; k++) {
            double wanted = sum[pieces] * k / steps;
            while (at < pieces - 1 && sum[at + 1] < wanted) {
                at++;
            }
            double share = (wanted - sum[at]) / (sum[at + 1] - sum[at]);
            grid[k] = k == 0 ? from : k == steps ? to : from * StrictMath.exp((at + share) / pieces * length);
        }
        return grid;
    }

    private static double step(List<Resonances.Peak> peaks, double f, double widest) {
        double step = widest;
        for (Resonances.Peak p : peaks) {
            double width = p.widthHz() / p.frequencyHz();
            double away = Math.max(0, Math.abs(StrictMath.log(f / p.frequencyHz())) - SCATTER);
            step = Math.min(step, width / IN_WIDTH * Math.sqrt(1 + 4 * away * away / (width * width)));
        }
        return step;
    }

    /** Whether some drawn units come out on a graded grid as on a fine one. */
    static boolean holds(JudgedCondition graded, JudgedCondition fine, Design nominal, ToleranceDraws scatter, long seed) {
        Trial truth = new Trial(fine);
        Trial coarse = new Trial(graded);
        for (int u = -1; u < TRIALS; u++) {
            Quantities drawn = u < 0 ? nominal.quantities() : scatter.at(scatter.normals(seed, u, 0));
            if (u < 0 || scatter.possible(drawn)) {
                try {
                    if (!near(truth.of(fine.unit(nominal, drawn)), coarse.of(fine.unit(nominal, drawn)))) {
                        return false;
                    }
                } catch (ImpossibleUnitException e) {
                    // another is tried
                }
            }
        }
        return true;
    }

    private static boolean near(double[] a, double[] b) {
        for (int i = 0; i < a.length; i++) {
            boolean both = Double.isNaN(a[i]) == Double.isNaN(b[i]);
            if (!both || Math.abs(a[i] - b[i]) > NEAR * Math.abs(a[i])) {
                return false;
            }
        }
        return true;
    }

    /** Worst residual and phase noise over their limits, as powers, and the jitter's square, on a condition's grid. */
    private static final class Trial {

        private final JudgedCondition condition;
        private final UnitResponse response;
        private final UnitWorstPoint search;

        Trial(JudgedCondition condition) {
            this.condition = condition;
            response = new UnitResponse(condition.base, condition.varied, condition.base.requirement().toHz());
            search = new UnitWorstPoint(condition, RequirementKind.PHASE_NOISE.bit() | RequirementKind.JITTER.bit());
        }

        double[] of(Design unit) {
            response.fill(unit);
            search.fill(unit, response);
            search.run(response, condition.nodes);
            double jitter = search.jitterRad();
            return new double[] {search.residual.value, search.noiseAsked() ? search.phaseNoise.value : 0, jitter * jitter};
        }
    }
}
