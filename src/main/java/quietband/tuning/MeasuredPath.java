package quietband.tuning;

import java.util.Arrays;
import org.hipparchus.complex.Complex;

/**
 * A measured response from the sensors' acceleration to fractional frequency, 1/g, taken with a digital filter that
 * passes everything. Between its points the logarithm of the magnitude and the unwrapped phase are linear over log f.
 *
 * @param frequencyHz rising, above 0
 * @param magnitude   per axis and frequency, 1/g, above 0
 * @param phase       per axis and frequency, rad; wrapped or not
 */
public record MeasuredPath(double[] frequencyHz, double[][] magnitude, double[][] phase) implements PathSource {

    public MeasuredPath {
        double[][] unwrapped = new double[3][];
        for (int i = 0; i < 3; i++) {
            unwrapped[i] = phase[i].clone();
            for (int n = 1; n < frequencyHz.length; n++) {
                double turn = unwrapped[i][n] - unwrapped[i][n - 1];
                unwrapped[i][n] -= 2 * Math.PI * Math.rint(turn / (2 * Math.PI));
            }
        }
        phase = unwrapped;
    }

    /** Whether a band in Hz lies within the measured frequencies. */
    public boolean covers(double from, double to) {
        return frequencyHz[0] <= from * (1 + 1e-9) && frequencyHz[frequencyHz.length - 1] >= to * (1 - 1e-9);
    }

    @Override
    public Complex weighted(int axis, double f) {
        int last = frequencyHz.length - 1;
        int found = Arrays.binarySearch(frequencyHz, f);
        int hi = found >= 0 ? Math.max(1, found) : Math.max(1, Math.min(last, -found - 1));
        double t = StrictMath.log(f / frequencyHz[hi - 1]) / StrictMath.log(frequencyHz[hi] / frequencyHz[hi - 1]);
        double share = Math.max(0, Math.min(1, t));
        double m = magnitude[axis][hi - 1] * StrictMath.pow(magnitude[axis][hi] / magnitude[axis][hi - 1], share);
        double p = phase[axis][hi - 1] + share * (phase[axis][hi] - phase[axis][hi - 1]);
        return new Complex(m * StrictMath.cos(p), m * StrictMath.sin(p));
    }
}
