package quietband.filter.goal;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;
import quietband.numerics.HouseholderLeastSquares;

/**
 * A filter as a combination of known responses, turned so that the first unknowns are those the band sees most and the
 * last ones those it does not see at all: F(f) = sum_k g_k sum_m v_mk phi_m(f), g = V'h, V orthogonal.
 */
public final class FilterBasis {

    // what the band sees by less than this of the most is lost in the rounding of its evaluation
    private static final double UNSEEN = 1e-15;

    /** Responses of the plain unknowns at f in Hz: taps, or numerators over given poles. */
    @FunctionalInterface
    public interface Plain {
        /** Writes real and imaginary parts (both modified, length as the count of unknowns). */
        void at(double f, double[] re, double[] im);
    }

    private final Plain plain;
    private final int size;
    private final double[][] v;
    private final int seen;
    private final double[] re;
    private final double[] im;

    private FilterBasis(Plain plain, int size, double[][] v, int seen) {
        this.plain = plain;
        this.size = size;
        this.v = v;
        this.seen = seen;
        this.re = new double[size];
        this.im = new double[size];
    }

    /**
     * Turned for a band.
     *
     * @param size      how many unknowns
     * @param frequency rising, Hz; at least half as many as unknowns
     */
    public static FilterBasis of(Plain plain, int size, double[] frequency) {
        double[][] columns = new double[size][2 * frequency.length];
        double[] re = new double[size];
        double[] im = new double[size];
        for (int n = 0; n < frequency.length; n++) {
            plain.at(frequency[n], re, im);
            for (int k = 0; k < size; k++) {
                columns[k][2 * n] = re[k];
                columns[k][2 * n + 1] = im[k];
            }
        }
        SingularValueDecomposition svd = new SingularValueDecomposition(triangle(columns));
        double[] sigma = svd.getSingularValues();
        int seen = 0;
        while (seen < size && sigma[seen] > UNSEEN * sigma[0]) {
            seen++;
        }
        return new FilterBasis(plain, size, svd.getV().transpose().getData(), seen);
    }

    /** Upper triangle of the QR factorisation by Householder reflections; the columns are overwritten. */
    private static RealMatrix triangle(double[][] a) {
        double[][] r = new double[a.length][a.length];
        for (int k = 0; k < a.length && k < a[0].length; k++) {
            r[k][k] = HouseholderLeastSquares.reflect(a, k, 0);
            for (int j = k + 1; j < a.length; j++) {
                r[k][j] = a[j][k];
            }
        }
        return new Array2DRowRealMatrix(r, false);
    }

    /** How many unknowns. */
    int size() {
        return size;
    }

    /** How many of them the band sees; the rest only matters outside of it. */
    int seen() {
        return seen;
    }

    /** Writes the response of each turned unknown at f in Hz (length size, or less: only so many are written). */
    void at(double f, double[] outRe, double[] outIm) {
        plain.at(f, re, im);
        for (int k = 0; k < outRe.length; k++) {
            double[] row = v[k];
            double sr = 0;
            double si = 0;
            for (int m = 0; m < size; m++) {
                sr += row[m] * re[m];
                si += row[m] * im[m];
            }
            outRe[k] = sr;
            outIm[k] = si;
        }
    }

    /** The plain unknowns h = V g (length size). */
    public double[] plain(double[] g) {
        double[] h = new double[size];
        for (int k = 0; k < size; k++) {
            for (int m = 0; m < size; m++) {
                h[m] += v[k][m] * g[k];
            }
        }
        return h;
    }

    /** Delays of 0 to size - 1 samples at a rate in Hz: z^-k. */
    public static Plain delays(double sampleRateHz) {
        return (f, re, im) -> {
            double w = 2 * Math.PI * f / sampleRateHz;
            for (int k = 0; k < re.length; k++) {
                re[k] = StrictMath.cos(w * k);
                im[k] = -StrictMath.sin(w * k);
            }
        };
    }
}
