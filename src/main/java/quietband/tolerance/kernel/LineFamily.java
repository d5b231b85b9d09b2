package quietband.tolerance.kernel;

import java.util.Arrays;
import java.util.List;

/**
 * Springs with mass along one principal axis that differ little from one another. What such a line adds to D and to N,
 * {@code k* phi(u)} and {@code m chi(u)} with {@code phi = b cot b}, {@code chi = tan(b/2)/b}, {@code u = b^2 = w^2 m/k*}, is expanded
 * around one u for all: with {@code u_i = u (1 + d_i)} the sums over the lines are
 * {@code sum_p u^p phi^(p)(u)/p! sum_i k*_i d_i^p b_i^T b_i}, u that of the lines' mean. Filled anew for each unit.
 */
final class LineFamily {

    /** How many powers of d there are, the zeroth counted. */
    static final int ORDERS = 6;

    private static final double NEGLIGIBLE = 1e-6;
    /** By power: how large what it is the power of must be to count, the root of what is negligible. */
    private static final double[] COUNTS = new double[ORDERS];

    static {
        for (int p = 1; p < ORDERS; p++) {
            COUNTS[p] = StrictMath.pow(NEGLIGIBLE, 1.0 / p);
        }
    }

    private static final double WIDEST = 0.12;
    double alphaRe;
    double alphaIm;
    /** sum_i k*_i d_i^p b_i^T b_i by element of the triangle, then p; which are not zero. */
    final double[][] kRe = new double[UnitBody.TRIANGLE][];
    final double[][] kIm = new double[UnitBody.TRIANGLE][];
    final boolean[] stiff = new boolean[UnitBody.TRIANGLE];
    /** sum_i m_i d_i^p b_i^T b_i by element of N, then p; which are not zero. */
    final double[][] mRe = new double[18][];
    final double[][] mIm = new double[18][];
    final boolean[] heavy = new boolean[18];
    /** k* d^p and m d^p of a line, by p. */
    private final double[] kPowerRe = new double[ORDERS];
    private final double[] kPowerIm = new double[ORDERS];
    private final double[] mPowerRe = new double[ORDERS];
    private final double[] mPowerIm = new double[ORDERS];
    private double ratio;
    private double spread;
    private double dRe;
    private double dIm;

    /** Expands around the mean of the lines. */
    void aroundMean(List<UnitBody.Line> lines) {
        double meanRe = 0;
        double meanIm = 0;
        double meanM = 0;
        for (UnitBody.Line line : lines) {
            meanRe += line.stiffness() / lines.size();
            meanIm += line.stiffness() * line.loss() / lines.size();
            meanM += line.mass() / lines.size();
        }
        double size = meanRe * meanRe + meanIm * meanIm;
        alphaRe = meanM * meanRe / size;
        alphaIm = -meanM * meanIm / size;
        ratio = Math.sqrt(alphaRe * alphaRe + alphaIm * alphaIm);
        spread = lines.size() > 1 ? widest(lines) : 0;
    }

    /** Whether the lines are near enough to what they are expanded around. */
    boolean holds(double top) {
        return step(top) < WIDEST;
    }

    private double widest(List<UnitBody.Line> lines) {
        double widest = 0;
        for (UnitBody.Line line : lines) {
            departure(line);
            widest = Math.max(widest, dRe * dRe + dIm * dIm);
        }
        return Math.sqrt(widest);
    }

    /** d of a line: (m/k*)/alpha - 1. */
    private void departure(UnitBody.Line line) {
        // m/(k (1 + j eta) alpha)
        double re = line.stiffness() * (alphaRe - line.loss() * alphaIm) / line.mass();
        double im = line.stiffness() * (alphaIm + line.loss() * alphaRe) / line.mass();
        double s = re * re + im * im;
        dRe = re / s - 1;
        dIm = -im / s;
    }

    /** Sums up the lines with as many orders as count up to an angular frequency. */
    void sum(List<UnitBody.Line> lines, double top) {
        int orders = orders(top);
        Arrays.fill(stiff, false);
        Arrays.fill(heavy, false);
        for (UnitBody.Line line : lines) {
            powers(line, orders);
            double[] row = line.row();
            for (int i = 0; i < 6; i++) {
                for (int j = 0; j < 6; j++) {
                    double both = row[i] * row[j];
                    if (both != 0 && j <= i) {
                        int e = UnitBody.at(i, j);
                        start(kRe, kIm, stiff, e, orders);
                        add(kRe[e], both, kPowerRe, orders);
                        add(kIm[e], both, kPowerIm, orders);
                    }
                    if (both != 0 && j < 3) {
                        int e = 3 * i + j;
                        start(mRe, mIm, heavy, e, orders);
                        add(mRe[e], both, mPowerRe, orders);
                        add(mIm[e], both, mPowerIm, orders);
                    }
                }
            }
        }
    }

    private void powers(UnitBody.Line line, int orders) {
        if (orders > 1) {
            departure(line);
        }
        kPowerRe[0] = line.stiffness();
        kPowerIm[0] = line.stiffness() * line.loss();
        mPowerRe[0] = line.mass();
        mPowerIm[0] = 0;
        for (int p = 1; p < orders; p++) {
            kPowerRe[p] = kPowerRe[p - 1] * dRe - kPowerIm[p - 1] * dIm;
            kPowerIm[p] = kPowerRe[p - 1] * dIm + kPowerIm[p - 1] * dRe;
            mPowerRe[p] = mPowerRe[p - 1] * dRe - mPowerIm[p - 1] * dIm;
            mPowerIm[p] = mPowerRe[p - 1] * dIm + mPowerIm[p - 1] * dRe;
        }
    }

    private static void start(double[][] re, double[][] im, boolean[] used, int e, int orders) {
        if (re[e] == null) {
            re[e] = new double[ORDERS];
            im[e] = new double[ORDERS];
        }
        if (!used[e]) {
            used[e] = true;
            Arrays.fill(re[e], 0, orders, 0);
            Arrays.fill(im[e], 0, orders, 0);
        }
    }

    private static void add(double[] sum, double by, double[] x, int n) {
        for (int p = 0; p < n; p++) {
            sum[p] += by * x[p];
        }
    }

    /** |u| at an angular frequency. */
    double size(double w) {
        return w * w * ratio;
    }

    /** How much smaller each further order is: d over the distance to the nearest pole, at pi^2; infinite beyond it. */
    private double step(double w) {
        double u = size(w);
        return u < Math.PI * Math.PI ? spread * u / (Math.PI * Math.PI - u) : Double.POSITIVE_INFINITY;
    }

    /** How many orders count up to an angular frequency. */
    int orders(double w) {
        if (spread == 0) {
            return 1;
        }
        double step = step(w);
        double left = step;
        int orders = 1;
        while (orders < ORDERS && left > NEGLIGIBLE) {
            left *= step;
            orders++;
        }
        return orders;
    }

    /**
     * From which frequency of a block on each order counts. Frequencies beside its nodes are always among them.
     *
     * @param from filled up to the number of orders
     */
    void starts(int[] from, int orders, FrequencyBlock b) {
        from[0] = 0;
        for (int p = 1; p < orders; p++) {
            // spread u/(pi^2 - u) is what counts there
            double u = COUNTS[p] * Math.PI * Math.PI / (spread + COUNTS[p]);
            int first = Arrays.binarySearch(b.w2, from[p - 1], b.n, u / ratio);
            from[p] = first < 0 ? -first - 1 : first;
        }
    }
}
