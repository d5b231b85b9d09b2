package quietband.filter.sections;

import java.util.Arrays;
import java.util.List;
import quietband.filter.ResidualTerms;
import quietband.numerics.HouseholderLeastSquares;

/** The weighted residual of three filters of sections with given poles and the numerators that suit them best. */
final class PoleRows {

    // Lawson's own is 1/2; more is quicker and wavers more
    private static final double SHARPNESS = 0.7;

    private final SectionPoles poles;
    private int count;
    private int each;
    private final double[] f;
    private final double[] gainHz;
    private final double rate;
    private final List<ResidualTerms.At> terms;
    private final double[][] original;
    private final double[][] weight;
    private final double[][] sensor;
    private final double[][] price;
    private double maxGain;
    private final double[] right;
    private double[][] columns;
    private final double[] rest;
    private double[] re;
    private double[] im;
    private HouseholderLeastSquares projection;

    PoleRows(SectionPoles poles, ResidualTerms terms, double[] f, double[][] weight, double[][] sensor, double[] gainHz) {
        this.poles = poles;
        this.f = f;
        this.gainHz = gainHz;
        this.rate = poles.sampleRateHz();
        this.sensor = sensor;
        this.original = weight;
        this.weight = Arrays.stream(weight).map(double[]::clone).toArray(double[][]::new);
        this.price = new double[gainHz.length][3];
        int m = 6 * f.length + 6 * sensor.length + 6 * gainHz.length;
        this.terms = terms.on(f);
        right = new double[m];
        rest = new double[m];
        right();
    }

    /** For so many sections from now on. */
    void sections(int n) {
        count = n;
        each = 2 * n + 1;
        columns = new double[3 * each][right.length];
        re = new double[each];
        im = new double[each];
        projection = new HouseholderLeastSquares(right.length, 3 * each);
    }

    private void right() {
        for (int n = 0; n < f.length; n++) {
            for (int j = 0; j < 3; j++) {
                right[6 * n + 2 * j] = weight[n][j] * terms.get(n).cRe()[j];
                right[6 * n + 2 * j + 1] = weight[n][j] * terms.get(n).cIm()[j];
            }
        }
    }

    /** Prices the gain outside of the band: at the most allowed everywhere it costs a share of what there is to cancel. */
    void price(double share, double most) {
        double sum = 0;
        for (double v : right) {
            sum += v * v;
        }
        maxGain = most;
        for (double[] p : price) {
            Arrays.fill(p, share * Math.sqrt(sum / (3 * gainHz.length)) / most);
        }
    }

    /** Raises the price where a row of poles takes more gain than is allowed. */
    void reprice(double[] row) {
        double[][] a = denominators(row);
        rest(row);
        double[] x = projection.solution();
        for (int i = 0; i < 3; i++) {
            SectionBasis basis = new SectionBasis(a[i]);
            for (int n = 0; n < gainHz.length; n++) {
                basis.write(2 * Math.PI * gainHz[n] / rate, re, im);
                double fRe = 0;
                double fIm = 0;
                for (int k = 0; k < each; k++) {
                    fRe += x[i * each + k] * re[k];
                    fIm += x[i * each + k] * im[k];
                }
                double over = Math.hypot(fRe, fIm) / (0.8 * maxGain);
                price[n][i] *= Math.max(1, Math.min(100, over * over));
            }
        }
    }

    /** Denominators per axis of a row of poles. */
    double[][] denominators(double[] row) {
        double[][] a = new double[3][];
        for (int i = 0; i < 3; i++) {
            a[i] = poles.denominators(row, 2 * count * i, count);
        }
        return a;
    }

    /** What is left with the best numerators; reused by the next call. */
    double[] rest(double[] row) {
        double[][] a = denominators(row);
        for (int i = 0; i < 3; i++) {
            SectionBasis basis = new SectionBasis(a[i]);
            for (int n = 0; n < f.length; n++) {
                basis.write(2 * Math.PI * f[n] / rate, re, im);
                for (int k = 0; k < each; k++) {
                    double[] column = columns[i * each + k];
                    for (int j = 0; j < 3; j++) {
                        double ar = terms.get(n).aRe()[3 * i + j] * weight[n][j];
                        double ai = terms.get(n).aIm()[3 * i + j] * weight[n][j];
                        column[6 * n + 2 * j] = ar * re[k] - ai * im[k];
                        column[6 * n + 2 * j + 1] = ar * im[k] + ai * re[k];
                    }
                    if (sensor.length > 0) {
                        column[6 * (f.length + n) + 2 * i] = sensor[n][i] * re[k];
                        column[6 * (f.length + n) + 2 * i + 1] = sensor[n][i] * im[k];
                    }
                }
            }
            int from = 6 * (f.length + sensor.length);
            for (int n = 0; n < gainHz.length; n++) {
                basis.write(2 * Math.PI * gainHz[n] / rate, re, im);
                for (int k = 0; k < each; k++) {
                    columns[i * each + k][from + 6 * n + 2 * i] = price[n][i] * re[k];
                    columns[i * each + k][from + 6 * n + 2 * i + 1] = price[n][i] * im[k];
                }
            }
        }
        projection.run(columns, right, rest);
        return rest;
    }

    /**
     * Multiplies each weight by its residual over the mean (modified): what stands out counts more from now on.
     *
     * @return the largest residual under the weights there were at first
     */
    double level(double[] row) {
        double[] r = rest(row);
        double[][] size = new double[f.length][3];
        double sum = 0;
        double most = 0;
        for (int n = 0; n < f.length; n++) {
            for (int j = 0; j < 3; j++) {
                double own = weight[n][j] > 0 ? Math.hypot(r[6 * n + 2 * j], r[6 * n + 2 * j + 1]) / weight[n][j] : 0;
                size[n][j] = own * original[n][j];
                sum += size[n][j];
                most = Math.max(most, size[n][j]);
            }
        }
        double mean = sum / (3 * f.length);
        for (int n = 0; n < f.length; n++) {
            for (int j = 0; j < 3; j++) {
                weight[n][j] *= Math.pow(Math.max(0.02, size[n][j] / mean), SHARPNESS);
            }
        }
        normalise();
        right();
        return most;
    }

    private void normalise() {
        double before = 0;
        double now = 0;
        for (int n = 0; n < f.length; n++) {
            for (int j = 0; j < 3; j++) {
                before += original[n][j] * original[n][j];
                now += weight[n][j] * weight[n][j];
            }
        }
        double scale = Math.sqrt(before / now);
        for (double[] w : weight) {
            for (int j = 0; j < 3; j++) {
                w[j] *= scale;
            }
        }
    }
}
