package quietband.filter.goal;

import java.util.BitSet;
import quietband.demand.ResidualDemand;
import quietband.filter.ResidualTerms;
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
    private final ResidualDemand demand;
    private final double[][] limit;
    private final BitSet active = new BitSet();

    /** On a grid of rising frequencies in Hz that shows every resonance. */
    public LimitGoal(FilterUnknowns unknowns, ResidualTerms terms, Design design, double[] grid) {
        this.unknowns = unknowns;
        this.rows = new BandRows(unknowns, terms.on(grid), grid);
        this.demand = new ResidualDemand(design, Double.POSITIVE_INFINITY);
        limit = new double[grid.length][3];
        for (int n = 0; n < grid.length; n++) {
            for (int j = 0; j < 3; j++) {
                double l = demand.limit(j, grid[n]);
                // a limit of 0 cannot be met by any filter: it does not decide
                limit[n][j] = l > 0 ? l : Double.POSITIVE_INFINITY;
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
            for (int row = 0; row < demand.rows(); row++) {
                if (Double.isFinite(limit[n][row])) {
                    program.add(cone(n, demand.axes(row)));
                }
            }
        });
    }

    private SecondOrderCone cone(int n, int[] drives) {
        int[] index = unknowns.seenWithGoal();
        int k = index.length - 1;
        double[][] g = new double[1 + 2 * drives.length][k + 1];
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
        double[] over = new double[3];
        for (int j = 0; j < 3; j++) {
            over[j] = rows.squared(n, j, x) / (limit[n][j] * limit[n][j]);
        }
        return Math.sqrt(demand.joined(over[0], over[1], over[2]));
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
