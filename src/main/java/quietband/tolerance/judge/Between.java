package quietband.tolerance.judge;

import java.util.Arrays;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.quantity.Quantities;
import quietband.tolerance.draw.ImpossibleUnitException;
import quietband.tolerance.kernel.BlockedGrid;
import quietband.tolerance.kernel.FrequencyBlock;

/**
 * The frequencies of a table between the nodes of a search: there the stacks on springs follow from what the search has worked out,
 * by the polynomial in log f through the six nodes around each. Only where a plan's own units show that this is near enough is it
 * used at all; else the platform's equations are solved at every frequency.
 */
public final class Between {

    /** Nodes that a polynomial goes through. */
    private static final int POINTS = 6;
    /** Largest share by which the power of the worst axis may differ in the trial: 0.004 dB, a quarter of a narrow cell of the counts. */
    private static final double NEAR = 1e-3;
    private static final int TRIALS = 16;
    // nodes on both sides of a step stand closer than any others
    private static final double STEP = 1e-9;

    public final FrequencyBlock[] blocks;
    private final int nodes;
    /** By block and frequency: the first of the nodes; the weight of each, frequency after frequency. */
    private final int[][] first;
    private final double[][] weight;

    private Between(BlockedGrid search, BlockedGrid table) {
        blocks = table.blocks;
        nodes = search.size();
        first = new int[blocks.length][];
        weight = new double[blocks.length][];
        int at = 0;
        for (int b = 0; b < blocks.length; b++) {
            first[b] = new int[blocks[b].n];
            weight[b] = new double[POINTS * blocks[b].n];
            for (int t = 0; t < blocks[b].n; t++) {
                weights(search.x, table.x[at++], b, t);
            }
        }
    }

    /**
     * For a plan and the frequencies of its table; null when its units have nodes of their own, when a curve steps or turns too
     * sharply for the nodes, or when there is no platform.
     */
    public static Between of(MonteCarloPlan plan, BlockedGrid table) {
        JudgedCondition nominal = plan.conditions().get(0);
        BlockedGrid search = nominal.nodes;
        if (nominal.seeded || nominal.varied.shared() || nominal.base.platform().isEmpty() || search.size() < POINTS
            || table.f[0] < search.f[0] || table.f[table.size() - 1] > search.f[search.size() - 1] || steps(search.x)) {
            return null;
        }
        Between between = new Between(search, table);
        return between.holds(plan, table) ? between : null;
    }

    private static boolean steps(double[] x) {
        for (int i = 1; i < x.length; i++) {
            if (x[i] - x[i - 1] < STEP) {
                return true;
            }
        }
        return false;
    }

    private void weights(double[] x, double at, int block, int t) {
        int above = Arrays.binarySearch(x, at);
        above = above < 0 ? -above - 1 : above;
        int from = Math.max(0, Math.min(x.length - POINTS, above - POINTS / 2));
        first[block][t] = from;
        for (int p = 0; p < POINTS; p++) {
            double w = 1;
            for (int q = 0; q < POINTS; q++) {
                w *= q == p ? 1 : (at - x[from + q]) / (x[from + p] - x[from + q]);
            }
            weight[block][POINTS * t + p] = w;
        }
    }

    /** Whether it is near enough for some units of a plan. */
    private boolean holds(MonteCarloPlan plan, BlockedGrid table) {
        UnitJudge judge = plan.nominalJudge(true);
        judge.keep(nodes);
        for (int u = -1; u < TRIALS; u++) {
            Quantities drawn = u < 0 ? plan.nominal().quantities() : plan.draw(plan.scatter(), u, 0);
            if (drawn != null && !holds(judge, plan.unit(0, drawn), table)) {
                return false;
            }
        }
        return true;
    }

    private boolean holds(UnitJudge judge, Design unit, BlockedGrid table) {
        try {
            judge.margin(unit);
        } catch (ImpossibleUnitException e) {
            return true;
        }
        double[][] solved = new double[Stack.values().length][table.size()];
        judge.table(table, (b, at, power) -> worst(power, solved, at, b.n));
        double[][] followed = new double[solved.length][table.size()];
        judge.table(this, (b, at, power) -> worst(power, followed, at, b.n));
        for (int s = 0; s < solved.length; s++) {
            for (int t = 0; t < table.size(); t++) {
                if (!(Math.abs(followed[s][t] - solved[s][t]) <= NEAR * solved[s][t])) {
                    return false;
                }
            }
        }
        return true;
    }

    /** The worst axis of each stack, which is what a table counts. */
    private static void worst(double[][][] power, double[][] into, int at, int n) {
        for (int s = 0; s < power.length; s++) {
            for (int t = 0; t < n; t++) {
                into[s][at + t] = Math.max(power[s][0][t], Math.max(power[s][1][t], power[s][2][t]));
            }
        }
    }

    /**
     * Powers of the three axes that are known at the search's nodes, at the frequencies of a block.
     *
     * @param known by axis and node
     * @param into  by axis and frequency
     */
    public void at(int block, double[][] known, double[][] into) {
        int[] from = first[block];
        double[] w = weight[block];
        double[] x = known[0];
        double[] y = known[1];
        double[] z = known[2];
        for (int t = 0; t < from.length; t++) {
            int i = from[t];
            int p = POINTS * t;
            double a = w[p];
            double b = w[p + 1];
            double c = w[p + 2];
            double d = w[p + 3];
            double e = w[p + 4];
            double f = w[p + 5];
            into[0][t] = Math.max(0, a * x[i] + b * x[i + 1] + (c * x[i + 2] + d * x[i + 3])
                + (e * x[i + 4] + f * x[i + 5]));
            into[1][t] = Math.max(0, a * y[i] + b * y[i + 1] + (c * y[i + 2] + d * y[i + 3])
                + (e * y[i + 4] + f * y[i + 5]));
            into[2][t] = Math.max(0, a * z[i] + b * z[i + 1] + (c * z[i + 2] + d * z[i + 3])
                + (e * z[i + 4] + f * z[i + 5]));
        }
    }
}
