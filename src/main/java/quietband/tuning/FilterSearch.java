package quietband.tuning;

/**
 * Finds the unknowns that serve a goal best within the bounds: first the least value, then of all that come near it the
 * smallest ones. Frequencies between those of the cones are looked at after every solution and added where needed.
 */
final class FilterSearch {

    private static final int ROUNDS = 12;
    private static final double COARSE = 1e-5;
    private static final double SETTLED = 1e-4;
    // keeps the equations regular along unknowns that nothing depends on
    private static final double RIDGE = 1e-12;

    private final FilterUnknowns unknowns;
    private final DesignGoal goal;
    private final GainBound gain;

    FilterSearch(FilterUnknowns unknowns, DesignGoal goal, GainBound gain) {
        this.unknowns = unknowns;
        this.goal = goal;
        this.gain = gain;
    }

    /** The unknowns with the least value alone. */
    double[] best() {
        return solve(Double.NaN);
    }

    /** The unknowns (length of all and the goal's number). */
    double[] run() {
        double[] best = solve(Double.NaN);
        return solve(goal.value(best) * (1 + goal.slack()));
    }

    /** Least value, or with a most for it the smallest unknowns. */
    private double[] solve(double most) {
        int n = unknowns.goal() + 1;
        boolean small = !Double.isNaN(most);
        double[] x = new double[n];
        double before = Double.POSITIVE_INFINITY;
        for (int round = 0; round < ROUNDS; round++) {
            double[] p = new double[n];
            double[] q = new double[n];
            java.util.Arrays.fill(p, small ? 1 : RIDGE);
            p[n - 1] = RIDGE;
            q[n - 1] = small ? 0 : 1;
            ConeProgram program = new ConeProgram(p, q).accuracy(COARSE);
            goal.addTo(program);
            gain.addTo(program);
            if (small) {
                program.add(new Cone(new int[] {n - 1}, new double[][] {{1}}, new double[] {most}));
            }
            x = program.solve();
            double now = goal.value(x);
            boolean more = goal.refine(x);
            more |= gain.refine(x);
            if (!more || !small && Math.abs(now - before) <= SETTLED * now) {
                break;
            }
            before = now;
        }
        return x;
    }
}
