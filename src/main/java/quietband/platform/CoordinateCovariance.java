package quietband.platform;

/**
 * Covariances of the platform's six coordinates q under random vibration, one sum for each of the 21 pairs b <= a in the order
 * (0,0), (1,0), (1,1), (2,0) and so on. Of a displacement u = l q along an axis at a point (l a row of {@link PointMotion}) the
 * variance is l C l^T.
 */
public final class CoordinateCovariance {

    /** How many sums there are. */
    public static final int PAIRS = 21;

    private CoordinateCovariance() { }

    /**
     * Adds weight Re(q_a q_b*) to the sums.
     *
     * @param weight mean square of the drive
     * @param re     of the six coordinates per unit drive
     * @param im     their imaginary parts
     * @param sums   {@value #PAIRS} of them from {@code at} on are modified
     */
    public static void add(double weight, double[] re, double[] im, double[] sums, int at) {
        int pair = at;
        for (int a = 0; a < 6; a++) {
            for (int b = 0; b <= a; b++) {
                sums[pair++] += weight * (re[a] * re[b] + im[a] * im[b]);
            }
        }
    }

    /** l C l^T with the six coefficients l from {@code from} on and the sums from {@code at} on; rounding may leave it below 0. */
    public static double variance(double[] rows, int from, double[] sums, int at) {
        double sum = 0;
        int pair = at;
        for (int a = 0; a < 6; a++) {
            for (int b = 0; b <= a; b++) {
                sum += (a == b ? 1 : 2) * rows[from + a] * rows[from + b] * sums[pair++];
            }
        }
        return sum;
    }
}
