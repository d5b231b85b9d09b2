package quietband.filter.goal;

import java.util.List;
import quietband.filter.ResidualTerms;
import quietband.numerics.ConeProgram;
import quietband.numerics.NormalEquations;

/** Least root of the sum of |y_j|^2 over three axes and a grid; t is over the least there is without bounds. */
public final class FlatGoal implements DesignGoal {

    private static final double NEAR = 0.005;
    private static final double LEAST_NEAR = 2e-5;
    private static final int HALVINGS = 60;

    private final FilterUnknowns unknowns;
    private final NormalEquations moments;
    private final SquareRows rows;
    private final double rest;
    private final double unit;
    private final double[] best;
    private final double near;

    /** Sums over a grid of rising frequencies in Hz. */
    public FlatGoal(FilterUnknowns unknowns, ResidualTerms terms, double[] grid) {
        this.unknowns = unknowns;
        int n = unknowns.seen().length;
        this.moments = new NormalEquations(n);
        double[] re = new double[n];
        double[] im = new double[n];
        List<ResidualTerms.At> at = terms.on(grid);
        for (int k = 0; k < grid.length; k++) {
            unknowns.at(grid[k]);
            for (int j = 0; j < 3; j++) {
                unknowns.rows(at.get(k), j, 1, re, im);
                moments.add(re, at.get(k).cRe()[j]);
                moments.add(im, at.get(k).cIm()[j]);
            }
        }
        this.best = moments.least(0);
        this.rest = left(at, grid, spread(best));
        this.rows = SquareRows.of(moments, rest, unknowns.seen());
        this.unit = Math.max(rest, 1e-8 * Math.sqrt(moments.right()));
        // small taps may not cost what looking at all axes together brings
        double alone = left(at, grid, alone(at, grid));
        this.near = Math.max(LEAST_NEAR, Math.min(NEAR, 0.9 * (alone / rest - 1)));
    }

    /** Root of the sum of |y_j|^2 with some unknowns, straight from the terms. */
    private double left(List<ResidualTerms.At> terms, double[] grid, double[] x) {
        double sum = 0;
        for (int k = 0; k < grid.length; k++) {
            unknowns.at(grid[k]);
            double[] squared = terms.get(k).squared(unknowns.filters(x));
            sum += squared[0] + squared[1] + squared[2];
        }
        return Math.sqrt(sum);
    }

    /** The unknowns when each filter only looks at its own axis. */
    private double[] alone(List<ResidualTerms.At> terms, double[] grid) {
        double[] x = new double[unknowns.goal() + 1];
        int n = unknowns.seen().length;
        double[] re = new double[n];
        double[] im = new double[n];
        for (int i = 0; i < 3; i++) {
            int from = unknowns.seenFrom(i);
            int size = unknowns.basis(i).seen();
            NormalEquations own = new NormalEquations(size);
            for (int k = 0; k < grid.length; k++) {
                ResidualTerms.At t = terms.get(k);
                unknowns.at(grid[k]);
                unknowns.rows(t, i, 1, re, im);
                own.add(java.util.Arrays.copyOfRange(re, from, from + size), t.cRe()[i]);
                own.add(java.util.Arrays.copyOfRange(im, from, from + size), t.cIm()[i]);
            }
            System.arraycopy(own.least(0), 0, x, unknowns.from(i), size);
        }
        return x;
    }

    /** Least residual norm without bounds, 1/g. */
    public double unbounded() {
        return rest;
    }

    private double[] spread(double[] seen) {
        double[] x = new double[unknowns.goal() + 1];
        for (int k = 0; k < seen.length; k++) {
            x[unknowns.seen()[k]] = seen[k];
        }
        return x;
    }

    /** Of all fits at most 0.5 % above the least without bounds the one with the smallest taps (length of all unknowns and one). */
    public double[] unboundedFit() {
        double most = rest * (1 + near);
        double low = Math.log(1e-40 * moments.right());
        double high = Math.log(1e6 * moments.right());
        double[] found = spread(best);
        for (int i = 0; i < HALVINGS && high - low > 0.01; i++) {
            double middle = (low + high) / 2;
            double[] x = spread(moments.least(Math.exp(middle)));
            if (Math.sqrt(rows.at(x)) <= most) {
                low = middle;
                found = x;
            } else {
                high = middle;
            }
        }
        return found;
    }

    @Override
    public void addTo(ConeProgram program) {
        program.add(rows.least(unknowns, unit));
    }

    @Override
    public boolean refine(double[] x) {
        return false;
    }

    @Override
    public double value(double[] x) {
        return Math.sqrt(rows.at(x)) / unit;
    }

    @Override
    public double slack() {
        return near;
    }
}
