package quietband.filter.goal;

import quietband.filter.ResidualFromTerms;
import quietband.filter.ResidualTerms;
import quietband.numerics.ConeProgram;
import quietband.numerics.NormalEquations;
import quietband.numerics.SecondOrderCone;

/** Least root of the sum of |y_j|^2 over three axes and a grid; t is over the least there is without bounds. */
public final class FlatGoal implements DesignGoal {

    private static final double NEAR = 0.005;
    private static final double LEAST_NEAR = 2e-5;
    private static final int HALVINGS = 60;

    private final FilterUnknowns unknowns;
    private final NormalEquations moments;
    private final double[][] factor;
    private final double whole;
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
        double[][] c = new double[2 * grid.length][3];
        for (int at = 0; at < grid.length; at++) {
            terms.at(grid[at]);
            unknowns.at(grid[at]);
            for (int j = 0; j < 3; j++) {
                unknowns.rows(terms, j, 1, re, im);
                moments.add(re, terms.cRe[j]);
                moments.add(im, terms.cIm[j]);
                c[2 * at][j] = terms.cRe[j];
                c[2 * at + 1][j] = terms.cIm[j];
            }
        }
        this.whole = Math.sqrt(moments.right());
        this.factor = moments.factor();
        this.best = moments.least(0);
        this.rest = left(terms, grid, spread(best));
        this.unit = Math.max(rest, 1e-8 * whole);
        // small taps may not cost what looking at all axes together brings
        double alone = left(terms, grid, alone(terms, grid));
        this.near = Math.max(LEAST_NEAR, Math.min(NEAR, 0.9 * (alone / rest - 1)));
    }

    /** Root of the sum of |y_j|^2 with some unknowns, straight from the terms. */
    private double left(ResidualTerms terms, double[] grid, double[] x) {
        double sum = 0;
        double[] fRe = new double[3];
        double[] fIm = new double[3];
        for (double f : grid) {
            terms.at(f);
            unknowns.at(f);
            unknowns.filters(x, fRe, fIm);
            sum += ResidualFromTerms.squared(terms, fRe, fIm);
        }
        return Math.sqrt(sum);
    }

    /** The unknowns when each filter only looks at its own axis. */
    private double[] alone(ResidualTerms terms, double[] grid) {
        double[] x = new double[unknowns.goal() + 1];
        int n = unknowns.seen().length;
        double[] re = new double[n];
        double[] im = new double[n];
        for (int i = 0; i < 3; i++) {
            int from = unknowns.seenFrom(i);
            int size = unknowns.basis(i).seen();
            NormalEquations own = new NormalEquations(size);
            for (double f : grid) {
                terms.at(f);
                unknowns.at(f);
                unknowns.rows(terms, i, 1, re, im);
                own.add(java.util.Arrays.copyOfRange(re, from, from + size), terms.cRe[i]);
                own.add(java.util.Arrays.copyOfRange(im, from, from + size), terms.cIm[i]);
            }
            System.arraycopy(own.least(0), 0, x, unknowns.from(i), size);
        }
        return x;
    }

    /** Least residual norm without bounds, 1/g. */
    public double unbounded() {
        return rest;
    }

    /** Residual norm of some unknowns, 1/g. */
    double norm(double[] x) {
        double sum = 0;
        int[] index = unknowns.seen();
        for (double[] row : factor) {
            double s = row[index.length];
            for (int k = 0; k < index.length; k++) {
                s -= row[k] * x[index[k]];
            }
            sum += s * s;
        }
        return Math.sqrt(sum + rest * rest);
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
            if (norm(x) <= most) {
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
        int[] index = unknowns.seenWithGoal();
        int n = index.length - 1;
        double[][] g = new double[n + 2][n + 1];
        double[] bound = new double[n + 2];
        g[0][n] = -1;
        for (int r = 0; r < n; r++) {
            for (int k = 0; k < n; k++) {
                g[r + 1][k] = factor[r][k] / unit;
            }
            bound[r + 1] = factor[r][n] / unit;
        }
        bound[n + 1] = rest / unit;
        program.add(new SecondOrderCone(index, g, bound));
    }

    @Override
    public boolean refine(double[] x) {
        return false;
    }

    @Override
    public double value(double[] x) {
        return norm(x) / unit;
    }

    @Override
    public double slack() {
        return near;
    }
}
