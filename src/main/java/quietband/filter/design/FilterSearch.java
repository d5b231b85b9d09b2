package quietband.filter.design;

import java.util.Arrays;
import org.hipparchus.stat.StatUtils;
import quietband.filter.goal.DesignGoal;
import quietband.filter.goal.FilterUnknowns;
import quietband.filter.goal.GainBound;
import quietband.filter.goal.SwingBound;
import quietband.numerics.ConeProgram;

/**
 * Finds the unknowns x that serve a goal best within the bounds, and of near-equal ones small ones: least t first; then
 * least t + w |x|^2, with the weight w such that t cannot rise by more than the goal's slack (at the optimum x* of t alone
 * t + w |x|^2 is t* (1 + slack) when w = slack t* / |x*|^2). Frequencies between those of the cones are looked at after every
 * solution and added where needed.
 */
final class FilterSearch {

    private static final int ROUNDS = 12;
    private static final int WEIGHINGS = 2;
    private static final double ACCURACY = 1e-5;
    private static final double SETTLED = 1e-4;
    // keeps the equations regular along unknowns that nothing depends on
    private static final double RIDGE = 1e-10;

    private final FilterUnknowns unknowns;
    private final DesignGoal goal;
    private final GainBound gain;
    private final SwingBound swing;

    FilterSearch(FilterUnknowns unknowns, DesignGoal goal, GainBound gain, SwingBound swing) {
        this.unknowns = unknowns;
        this.goal = goal;
        this.gain = gain;
        this.swing = swing;
    }

    /** The unknowns with the least value alone, nearly within the bounds (length of all and the goal's number). */
    double[] best() {
        return solve(RIDGE, SETTLED);
    }

    /** The unknowns (length of all and the goal's number). */
    double[] run() {
        double[] x = best();
        double least = goal.value(x);
        for (int i = 1; i <= WEIGHINGS; i++) {
            double weight = goal.slack() / WEIGHINGS * least / Math.max(1e-30, StatUtils.sumSq(x, 0, unknowns.goal()));
            x = solve(Math.max(RIDGE, weight), i < WEIGHINGS ? SETTLED : 0);
        }
        return x;
    }

    private double[] solve(double weight, double settled) {
        int n = unknowns.goal() + 1;
        double[] x = new double[n];
        double before = Double.POSITIVE_INFINITY;
        for (int round = 0; round < ROUNDS; round++) {
            double[] p = new double[n];
            double[] q = new double[n];
            Arrays.fill(p, 2 * weight);
            p[n - 1] = RIDGE;
            q[n - 1] = 1;
            ConeProgram program = new ConeProgram(p, q).accuracy(ACCURACY);
            goal.addTo(program);
            gain.addTo(program);
            swing.addTo(program);
            x = program.solve();
            double now = goal.value(x);
            boolean more = goal.refine(x);
            more |= gain.refine(x);
            more |= swing.refine(x);
            if (!more || Math.abs(now - before) <= settled * now) {
                break;
            }
            before = now;
        }
        return x;
    }
}
