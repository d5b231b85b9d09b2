package quietband.filter.sections;

import java.util.List;
import java.util.TreeSet;

/**
 * Poles of second-order sections as pairs of an analog frequency w0 (rad/s) and damping ratio z, z = exp(s T) of the roots of
 * s^2 + 2 z w0 s + w0^2: stable whatever the numbers. A row holds ln w0 and ln z of each pair.
 */
public final class SectionPoles {

    private static final double LEAST_DAMPING = Math.log(0.1);
    private static final double MOST_DAMPING = Math.log(3000);

    private final double sampleRateHz;
    private final double slowest;

    /**
     * For a rate.
     *
     * @param slowestHz corner of the slowest pole allowed, Hz
     */
    public SectionPoles(double sampleRateHz, double slowestHz) {
        this.sampleRateHz = sampleRateHz;
        this.slowest = 2 * Math.PI * slowestHz;
    }

    double sampleRateHz() {
        return sampleRateHz;
    }

    /** Two real poles with their corners in Hz, as a pair. */
    public static double[] real(double oneHz, double otherHz) {
        double w0 = 2 * Math.PI * Math.sqrt(oneHz * otherHz);
        return new double[] {Math.log(w0), Math.log(Math.PI * (oneHz + otherHz) / w0)};
    }

    /** A resonance. */
    public static double[] resonance(double frequencyHz, double damping) {
        return new double[] {Math.log(2 * Math.PI * frequencyHz), Math.log(damping)};
    }

    /** Brings a row of pairs into what is allowed (modified). */
    public void clamp(double[] row) {
        double most = Math.log(3 * sampleRateHz);
        for (int k = 0; k < row.length; k += 2) {
            row[k] = Math.max(Math.log(slowest), Math.min(most, row[k]));
            row[k + 1] = Math.max(LEAST_DAMPING, Math.min(MOST_DAMPING, row[k + 1]));
        }
    }

    /** Denominators {a1, a2} of each pair, one after the other (length as the row from an index on, {@code 2 count}). */
    public double[] denominators(double[] row, int from, int count) {
        double[] a = new double[2 * count];
        for (int k = 0; k < count; k++) {
            double w = Math.exp(row[from + 2 * k]) / sampleRateHz;
            double z = Math.exp(row[from + 2 * k + 1]);
            if (z >= 1) {
                double sum = z + Math.sqrt(z * z - 1);
                double fast = Math.exp(-w * sum);
                double slow = Math.exp(-Math.max(w / sum, slowest / sampleRateHz));
                a[2 * k] = -(fast + slow);
                a[2 * k + 1] = fast * slow;
            } else {
                double size = Math.exp(-w * z);
                a[2 * k] = -2 * size * Math.cos(Math.min(Math.PI, w * Math.sqrt(1 - z * z)));
                a[2 * k + 1] = size * size;
            }
        }
        return a;
    }

    /** Corners of the poles of denominators {a1, a2, ..}, |ln p| fs / 2 pi, Hz: below half the rate. */
    public static double[] corners(List<double[]> denominators, double sampleRateHz) {
        TreeSet<Double> f = new TreeSet<>();
        for (double[] a : denominators) {
            for (int m = 0; m < a.length; m += 2) {
                double d = a[m] * a[m] / 4 - a[m + 1];
                double root = Math.sqrt(Math.abs(d));
                double[] ln = d < 0 ? new double[] {Math.hypot(Math.log(a[m + 1]) / 2, Math.atan2(root, -a[m] / 2))}
                    : new double[] {Math.log(Math.abs(root - a[m] / 2)), Math.log(Math.abs(a[m + 1] / (root - a[m] / 2)))};
                for (double l : ln) {
                    double corner = Math.abs(l) * sampleRateHz / (2 * Math.PI);
                    if (corner > 0 && corner < sampleRateHz / 2) {
                        f.add(corner);
                    }
                }
            }
        }
        return f.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
