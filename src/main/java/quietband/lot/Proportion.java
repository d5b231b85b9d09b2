package quietband.lot;

import org.hipparchus.distribution.continuous.BetaDistribution;

/**
 * The share of good units among all, from some of them: exact interval of Clopper and Pearson (Biometrika 26 (1934) 404), from
 * quantiles of the beta distribution.
 *
 * @param good       how many were good
 * @param of         how many were looked at, above 0
 * @param confidence of the interval, between 0 and 1
 */
public record Proportion(long good, long of, double confidence) {

    /** The share itself. */
    public double estimate() {
        return (double) good / of;
    }

    /** Lower end of the two-sided interval. */
    public double low() {
        return lower((1 - confidence) / 2);
    }

    /** Upper end. */
    public double high() {
        double tail = (1 - confidence) / 2;
        return good == of ? 1 : new BetaDistribution(good + 1.0, of - good).inverseCumulativeProbability(1 - tail);
    }

    /** What the share is at least with the confidence: lower end of the one-sided interval. */
    public double atLeast() {
        return lower(1 - confidence);
    }

    private double lower(double tail) {
        return good == 0 ? 0 : new BetaDistribution(good, of - good + 1.0).inverseCumulativeProbability(tail);
    }

    /**
     * How many units must be looked at for the claim that at least a share is good, when a given number of them may fail
     * (S. S. Wilks, Ann. Math. Statist. 12 (1941) 91): the least n with P(at most so many failures) at most 1 - confidence.
     *
     * @param share      below 1
     * @param confidence below 1
     * @param failures   allowed, at least 0
     */
    public static long unitsNeeded(double share, double confidence, int failures) {
        for (long n = failures + 1L; ; n++) {
            double term = StrictMath.pow(share, n);
            double sum = term;
            for (int k = 1; k <= failures; k++) {
                term *= (n - k + 1.0) / k * (1 - share) / share;
                sum += term;
            }
            if (sum <= 1 - confidence + 1e-15) {
                return n;
            }
        }
    }
}
