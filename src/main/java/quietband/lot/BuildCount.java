package quietband.lot;

import org.hipparchus.special.Beta;

/** How many units must be built to have a number of good ones. */
public final class BuildCount {

    private static final long MOST = 1_000_000_000_000L;

    private BuildCount() { }

    /**
     * The least n with P(at least so many good among n) at least the confidence, a binomial tail: I_p(k, n - k + 1).
     *
     * @param wanted     good units k, at least 1
     * @param share      of good units p, 0 to 1
     * @param confidence between 0 and 1
     * @return n, or -1 when a share of (nearly) 0 makes it beyond any count
     */
    public static long of(long wanted, double share, double confidence) {
        if (!(share > 1e-11)) {
            return -1;
        }
        if (share >= 1) {
            return wanted;
        }
        long low = wanted - 1;
        long high = wanted;
        while (enough(wanted, high, share) < confidence) {
            low = high;
            high *= 2;
            if (high > MOST) {
                return -1;
            }
        }
        while (high - low > 1) {
            long middle = (low + high) / 2;
            if (enough(wanted, middle, share) < confidence) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /** Probability of at least k good ones among n. */
    static double enough(long wanted, long n, double share) {
        return n < wanted ? 0 : Beta.regularizedBeta(share, wanted, n - wanted + 1.0);
    }
}
