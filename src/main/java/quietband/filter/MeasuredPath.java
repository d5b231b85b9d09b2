package quietband.filter;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.hipparchus.complex.Complex;
import quietband.model.Axis;
import quietband.model.Design;

/**
 * A measured response from the sensors' acceleration to fractional frequency, 1/g, taken with a digital filter that
 * passes everything: weight_i P_i,
 * positive where the cancellation takes off what a positive acceleration makes. Between its points the logarithm of the
 * magnitude and the unwrapped phase are linear over log f.
 *
 * @param frequencyHz rising, above 0
 * @param magnitude   per axis and frequency, 1/g, above 0
 * @param phase       per axis and frequency, rad; wrapped or not
 */
public record MeasuredPath(double[] frequencyHz, double[][] magnitude, double[][] phase) implements PathResponse {

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

    private static final double COARSE = 2.5;

    /**
     * Checked: every axis, a phase, magnitudes above 0, and points so close that the phase between them is certain.
     *
     * @param file        named in messages
     * @param frequencyHz rising, above 0
     * @param magnitude   1/g per axis (length 3); null for an axis that is missing
     * @param phase       rad per axis (length 3); null where it was not measured
     * @throws FilterException when anything is missing
     */
    public static MeasuredPath of(String file, double[] frequencyHz, double[][] magnitude, double[][] phase) {
        if (frequencyHz.length < 2) {
            throw new FilterException(file + ": a response needs two frequencies at least; measure the whole band");
        }
        for (Axis axis : Axis.ALL) {
            int i = axis.ordinal();
            String name = file + ": axis " + axis.letter();
            if (magnitude[i] == null) {
                throw new FilterException(name + " is missing; the three filters are designed together, so give the response of every "
                    + "sensor, also one that is as the model has it");
            }
            if (phase[i] == null) {
                throw new FilterException(name + " has no phase; a filter cannot be designed from a magnitude alone: add "
                    + axis.letter() + "_phase_deg");
            }
            for (int n = 0; n < frequencyHz.length; n++) {
                if (!(magnitude[i][n] > 0)) {
                    throw new FilterException(String.format(Locale.ROOT, "%s reads 0 at %s Hz, where no filter can help; leave the "
                        + "frequency out or measure it again", name, frequencyHz[n]));
                }
            }
        }
        MeasuredPath path = new MeasuredPath(frequencyHz.clone(), magnitude, phase);
        for (Axis axis : Axis.ALL) {
            double[] p = path.phase[axis.ordinal()];
            for (int n = 1; n < p.length; n++) {
                if (Math.abs(p[n] - p[n - 1]) > COARSE) {
                    throw new FilterException(String.format(Locale.ROOT, "%s: axis %s turns by %.0f deg from %s to %s Hz, so that "
                        + "its phase "
                        + "between them is not certain; measure more frequencies there", file, axis.letter(),
                        Math.toDegrees(p[n] - p[n - 1]), frequencyHz[n - 1], frequencyHz[n]));
                }
            }
        }
        return path;
    }

    /** Axes on which most of the band answers with the sign opposite to the model's. */
    public List<Axis> opposite(Design design) {
        PathResponse model = PathResponse.of(design);
        List<Axis> opposite = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            int against = 0;
            for (double f : frequencyHz) {
                Complex here = weighted(axis.ordinal(), f);
                against += here.multiply(model.weighted(axis.ordinal(), f).conjugate()).getReal() < 0 ? 1 : -1;
            }
            if (against > 0) {
                opposite.add(axis);
            }
        }
        return opposite;
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
