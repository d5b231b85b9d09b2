package quietband.tuning;

/** Least root of the sum of |y_j|^2 over three axes and a grid; t is over the least there is without bounds. */
final class FlatGoal implements DesignGoal {

    private static final double NEAR = 0.005;
    private static final int HALVINGS = 60;

    private final FilterUnknowns unknowns;
    private final Moments moments;
    private final double[][] factor;
    private final double whole;
    private final double rest;
    private final double unit;
    private final double[] best;

    /** Sums over a grid of rising frequencies in Hz. */
    FlatGoal(FilterUnknowns unknowns, ResidualTerms terms, double[] grid) {
        this.unknowns = unknowns;
        int n = unknowns.seen().length;
        this.moments = new Moments(n);
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
        double sum = 0;
        double[] fRe = new double[3];
        double[] fIm = new double[3];
        double[] x = spread(best);
        for (double f : grid) {
            terms.at(f);
            unknowns.at(f);
            unknowns.filters(x, fRe, fIm);
            sum += Residuals.squared(terms, fRe, fIm);
        }
        this.rest = Math.sqrt(sum);
        this.unit = Math.max(rest, 1e-8 * whole);
    }

    /** Least residual norm without bounds, 1/g. */
    double unbounded() {
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

    /** Of all fits within 0.5 % of the least, without bounds, the one with the smallest taps (length of all unknowns and one). */
    double[] unboundedFit() {
        double most = rest * (1 + NEAR);
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
        program.add(new Cone(index, g, bound));
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
        return NEAR;
    }
}
