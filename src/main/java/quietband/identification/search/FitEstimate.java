package quietband.identification.search;

import java.util.List;
import java.util.stream.IntStream;

/**
 * What one fit found. Arrays are not copied; do not modify.
 *
 * @param free       the numbers asked for
 * @param u          where they ended
 * @param held       which stay at the model's number because the data do not determine them
 * @param atBound    which ended at the edge of what makes sense
 * @param re         prediction of every point, real
 * @param im         prediction, imaginary
 * @param sigma      standard uncertainty of every point's real numbers
 * @param outlier    which points were left out
 * @param covariance of u; 0 for what was held or sits at a bound
 * @param rows       real numbers used
 * @param likelihood -2 ln of the likelihood
 * @param fitted     how many numbers were fitted, those of the noise included
 * @param noise      how noisy each curve is, in words
 * @param notes      what a person must know
 */
public record FitEstimate(FreeValues free, double[] u, boolean[] held, boolean[] atBound, double[] re, double[] im, double[] sigma,
                boolean[] outlier, double[][] covariance, int rows, double likelihood, int fitted, List<String> noise,
                List<String> notes) {

    public boolean determined(int i) {
        return !held[i] && !atBound[i];
    }

    public int active() {
        return (int) IntStream.range(0, u.length).filter(this::determined).count();
    }

    public double value(int i) {
        return held[i] ? free.get(i).start() : free.get(i).toValue(u[i]);
    }

    /** One standard error in the number's base unit; NaN where there is none. */
    public double standardError(int i) {
        return determined(i) ? Math.abs(free.get(i).slope(u[i])) * Math.sqrt(covariance[i][i]) : Double.NaN;
    }

    public double correlation(int i, int j) {
        return determined(i) && determined(j) ? covariance[i][j] / Math.sqrt(covariance[i][i] * covariance[j][j]) : Double.NaN;
    }

    /** Akaike's criterion with its small-sample term (Hurvich and Tsai 1989, from memory). */
    public double aicc() {
        double k = fitted;
        return likelihood + 2 * k + 2 * k * (k + 1) / Math.max(1, rows - k - 1);
    }

    /** Schwarz' criterion. */
    public double bic() {
        return likelihood + fitted * Math.log(rows);
    }
}
