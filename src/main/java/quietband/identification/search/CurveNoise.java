package quietband.identification.search;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;
import org.hipparchus.stat.StatUtils;

/**
 * How noisy one curve is where no uncertainty was stated, from what a fit leaves: a constant share of the magnitude; that and
 * a floor, sigma^2 = (a |H|)^2 + b^2; or a share that changes with frequency (straight lines between knots on a log scale).
 * The one with the least Bayesian information criterion is taken.
 */
record CurveNoise(double[] sigma, int numbers, String words) {

    private static final int ROUNDS = 12;

    /**
     * Estimates.
     *
     * @param f       Hz, rising
     * @param size    |H| as predicted
     * @param square  squared differences, summed over the real numbers of a point
     * @param numbers real numbers of a point: 1 or 2
     * @param used    whether a point counts
     */
    static CurveNoise of(double[] f, double[] size, double[] square, int numbers, boolean[] used) {
        int n = 0;
        double relative = 0;
        for (int i = 0; i < f.length; i++) {
            if (used[i]) {
                n += numbers;
                relative += square[i] / (size[i] * size[i]);
            }
        }
        double a = Math.sqrt(Math.max(relative / Math.max(n, 1), 1e-30));
        double[] sigma = Arrays.stream(size).map(s -> a * s).toArray();
        CurveNoise best = new CurveNoise(sigma, 1, String.format(Locale.ROOT, "%.2g %% of the magnitude", 100 * a));
        double least = best.criterion(square, numbers, used, n);
        if (a < 1e-9) {
            return best;
        }
        for (CurveNoise other : List.of(floor(size, square, numbers, used, n), knots(f, size, square, numbers, used, n))) {
            double c = other.criterion(square, numbers, used, n);
            if (c < least - 2) {
                least = c;
                best = other;
            }
        }
        return best;
    }

    private double criterion(double[] square, int count, boolean[] used, int n) {
        return minusTwoLogLikelihood(square, count, used) + numbers * Math.log(Math.max(n, 2));
    }

    /** But for the constant n ln(2 pi). */
    double minusTwoLogLikelihood(double[] square, int count, boolean[] used) {
        double sum = 0;
        for (int i = 0; i < sigma.length; i++) {
            if (used[i]) {
                sum += 2 * count * Math.log(sigma[i]) + square[i] / (sigma[i] * sigma[i]);
            }
        }
        return sum;
    }

    private static CurveNoise floor(double[] size, double[] square, int numbers, boolean[] used, int n) {
        double top = StatUtils.max(size);
        CurveNoise best = null;
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k <= 40; k++) {
            double floor = top * Math.pow(10, -4 + 0.1 * k);
            double[] sigma = new double[size.length];
            double scale = 0;
            for (int i = 0; i < sigma.length; i++) {
                sigma[i] = Math.hypot(size[i], floor);
                scale += used[i] ? square[i] / (sigma[i] * sigma[i]) : 0;
            }
            double a = Math.sqrt(scale / n);
            for (int i = 0; i < sigma.length; i++) {
                sigma[i] *= a;
            }
            CurveNoise noise = new CurveNoise(sigma, 2, String.format(Locale.ROOT, "%.2g %% of the magnitude and a floor of %.2g", 100 * a,
                a * floor));
            double c = noise.minusTwoLogLikelihood(square, numbers, used);
            if (c < least) {
                least = c;
                best = noise;
            }
        }
        return best;
    }

    /** ln sigma^2 = 2 ln|H| + hat functions of log f, by Fisher scoring. */
    private static CurveNoise knots(double[] f, double[] size, double[] square, int numbers, boolean[] used, int n) {
        int knots = Math.max(2, Math.min(6, n / 15));
        double[][] basis = new double[f.length][knots];
        double from = Math.log(f[0]);
        double width = Math.max(1e-9, (Math.log(f[f.length - 1]) - from) / (knots - 1));
        double mean = 0;
        for (int i = 0; i < f.length; i++) {
            for (int k = 0; k < knots; k++) {
                basis[i][k] = Math.max(0, 1 - Math.abs((Math.log(f[i]) - from) / width - k));
            }
            mean += used[i] ? square[i] / (size[i] * size[i]) / n : 0;
        }
        double[] beta = new double[knots];
        Arrays.fill(beta, Math.log(mean));
        for (int round = 0; round < ROUNDS; round++) {
            RealMatrix h = new Array2DRowRealMatrix(knots, knots);
            double[] g = new double[knots];
            for (int i = 0; i < f.length; i++) {
                double excess = used[i] ? square[i] / (size[i] * size[i]) / Math.exp(dot(basis[i], beta)) - numbers : 0;
                for (int k = 0; k < knots; k++) {
                    g[k] += basis[i][k] * excess;
                    for (int l = 0; l < knots && used[i]; l++) {
                        h.addToEntry(k, l, numbers * basis[i][k] * basis[i][l]);
                    }
                }
            }
            double[] step = new SingularValueDecomposition(h).getSolver().solve(new ArrayRealVector(g, false)).toArray();
            for (int k = 0; k < knots; k++) {
                beta[k] += Math.max(-2, Math.min(2, step[k]));
            }
        }
        double[] sigma = new double[f.length];
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        for (int i = 0; i < f.length; i++) {
            double share = Math.exp(dot(basis[i], beta) / 2);
            low = Math.min(low, share);
            high = Math.max(high, share);
            sigma[i] = share * size[i];
        }
        return new CurveNoise(sigma, knots, String.format(Locale.ROOT, "%.2g to %.2g %% of the magnitude, changing with frequency",
            100 * low, 100 * high));
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
