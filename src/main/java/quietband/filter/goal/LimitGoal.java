package quietband.filter.goal;

import java.util.BitSet;
import java.util.List;
import quietband.demand.ResidualLimit;
import quietband.filter.ResidualTerms;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.numerics.ConeProgram;
import quietband.numerics.SecondOrderCone;

/** Least largest |y_j| over its limit (of the vector where the requirement says so); t is that ratio. */
public final class LimitGoal implements DesignGoal {

    private static final double NEAR = 0.005;
    private static final double BEYOND = 5e-4;
    private static final int START = 60;

    private final FilterUnknowns unknowns;
    private final BandRows rows;
    private final boolean vector;
    private final double[][] limit;
    private final BitSet active = new BitSet();

    /** On a grid of rising frequencies in Hz that shows every resonance. */
    public LimitGoal(FilterUnknowns unknowns, ResidualTerms terms, Design design, double[] grid) {
        this.unknowns = unknowns;
        this.rows = new BandRows(unknowns, terms, grid);
        this.vector = design.requirement().byVector();
        ResidualLimit line = new ResidualLimit(design);
        limit = new double[grid.length][3];
        for (int n = 0; n < grid.length; n++) {
            for (Axis axis : Axis.ALL) {
                double l = vector ? line.vector(grid[n]) : line.at(axis, grid[n]);
                // a limit of 0 cannot be met by any filter: it does not decide
                limit[n][axis.ordinal()] = l > 0 ? l : Double.POSITIVE_INFINITY;
            }
        }
        int step = Math.max(1, grid.length / START);
        for (int n = 0; n < grid.length; n += step) {
            active.set(n);
        }
        active.set(grid.length - 1);
    }

    @Override
    public void addTo(ConeProgram program) {
        active.stream().forEach(n -> {
            for (List<Integer> drives : vector ? List.of(List.of(0, 1, 2)) : List.of(List.of(0), List.of(1), List.of(2))) {
                if (Double.isFinite(limit[n][drives.get(0)])) {
                    program.add(cone(n, drives));
                }
            }
        });
    }

    private SecondOrderCone cone(int n, List<Integer> drives) {
        int[] index = unknowns.seenWithGoal();
        int k = index.length - 1;
        double[][] g = new double[1 + 2 * drives.size()][k + 1];
        double[] bound = new double[g.length];
        g[0][k] = -1;
        int at = 1;
        for (int j : drives) {
            for (int part = 0; part < 2; part++) {
                double[] from = rows.rows(n)[2 * j + part];
                for (int m = 0; m < k; m++) {
                    g[at][m] = from[m] / limit[n][j];
                }
                bound[at++] = rows.plain(n)[2 * j + part] / limit[n][j];
            }
        }
        return new SecondOrderCone(index, g, bound);
    }

    private double ratio(int n, double[] x) {
        double most = 0;
        double sum = 0;
        for (int j = 0; j < 3; j++) {
            double s = rows.squared(n, j, x) / (limit[n][j] * limit[n][j]);
            most = Math.max(most, s);
            sum += s;
        }
        return Math.sqrt(vector ? sum : most);
    }

    @Override
    public boolean refine(double[] x) {
        double[] ratio = new double[rows.size()];
        double known = 0;
        for (int n = 0; n < ratio.length; n++) {
            ratio[n] = ratio(n, x);
            known = active.get(n) ? Math.max(known, ratio[n]) : known;
        }
        boolean more = false;
        for (int n = 0; n < ratio.length; n++) {
            boolean local = (n == 0 || ratio[n] >= ratio[n - 1]) && (n == ratio.length - 1 || ratio[n] >= ratio[n + 1]);
            if (local && ratio[n] > known * (1 + BEYOND) && !active.get(n)) {
                active.set(n);
                more = true;
            }
        }
        return more;
    }

    @Override
    public double value(double[] x) {
        double most = 0;
        for (int n = 0; n < rows.size(); n++) {
            most = Math.max(most, ratio(n, x));
        }
        return most;
    }

    @Override
    public double slack() {
        return NEAR;
    }
}
