package quietband.identification.search;

import java.util.Arrays;

/**
 * Weighted differences between prediction and measurement as one vector, and their derivatives.
 *
 * <p>In logarithms: ln|H| - ln m and, where a phase was measured, the phase difference within +-pi: wide valleys, for a start far
 * off. Plain: Re and Im of H - m exp(j phase), or |H| - m: without bias for additive noise, for the end.
 */
final class WeightedMisfit {

    private static final double STEP = 1e-5;
    private static final double IMPOSSIBLE = 1e4;

    private final ResponseEvaluator evaluator;
    private final MeasuredPoints seen;
    private final double[] weight;
    private final boolean log;
    private final int rows;
    private final double[] re;
    private final double[] im;

    /** @param weight per point, 1/sigma of the difference; 0 leaves a point out */
    WeightedMisfit(ResponseEvaluator evaluator, double[] weight, boolean log) {
        this.evaluator = evaluator;
        this.seen = evaluator.seen();
        this.weight = weight;
        this.log = log;
        this.rows = seen.numbers();
        this.re = new double[seen.size()];
        this.im = new double[seen.size()];
    }

    int rows() {
        return rows;
    }

    /** The weighted differences; all large where no such design can exist. */
    double[] at(double[] u) {
        double[] out = new double[rows];
        if (!evaluator.predict(u, re, im)) {
            Arrays.fill(out, IMPOSSIBLE);
            return out;
        }
        int r = 0;
        for (int i = 0; i < seen.size(); i++) {
            double w = weight[i];
            double m = seen.magnitude()[i];
            double p = seen.phase()[i];
            boolean phased = seen.phased(i);
            if (log) {
                out[r++] = w * Math.log(Math.max(Math.hypot(re[i], im[i]), 1e-300) / m);
                if (phased) {
                    out[r++] = w * Math.IEEEremainder(Math.atan2(im[i], re[i]) - p, 2 * Math.PI);
                }
            } else if (phased) {
                out[r++] = w * (re[i] - m * Math.cos(p));
                out[r++] = w * (im[i] - m * Math.sin(p));
            } else {
                out[r++] = w * (Math.hypot(re[i], im[i]) - m);
            }
        }
        return out;
    }

    /** Derivatives by central differences, one-sided at a bound; [value][row]. */
    double[][] slopes(double[] u, int[] which) {
        double[][] columns = new double[which.length][];
        for (int k = 0; k < which.length; k++) {
            FreeValue v = evaluator.free().get(which[k]);
            double[] up = u.clone();
            double[] down = u.clone();
            up[which[k]] = Math.min(v.most(), u[which[k]] + STEP);
            down[which[k]] = Math.max(v.least(), u[which[k]] - STEP);
            double width = up[which[k]] - down[which[k]];
            double[] a = at(up);
            double[] b = at(down);
            for (int i = 0; i < rows; i++) {
                a[i] = (a[i] - b[i]) / width;
            }
            columns[k] = a;
        }
        return columns;
    }
}
