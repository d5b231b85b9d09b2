package quietband.cancellation;

import java.util.Arrays;
import org.hipparchus.complex.Complex;
import quietband.model.DigitalFilter;
import quietband.spectrum.ComplexProduct;

/** Frequency response of a digital filter. */
public final class FilterResponse {

    private final int[] index;
    private final double[] tap;
    private final double[][] section;
    private final double sampleRateHz;

    /** For a filter that runs at a sample rate in Hz, above 0 (any for an empty filter). */
    public FilterResponse(DigitalFilter filter, double sampleRateHz) {
        this.index = filter.tapIndex();
        this.tap = filter.taps();
        this.section = filter.sections();
        this.sampleRateHz = sampleRateHz;
    }

    /**
     * (sum over taps of b z^-index, 1 without taps) times the product over sections of
     * (b0 + b1 z^-1 + b2 z^-2)/(1 + a1 z^-1 + a2 z^-2), z = exp(j w/fs).
     *
     * @param f in Hz
     */
    public Complex at(double f) {
        return at(new ComplexProduct(), f).value();
    }

    /** Multiplies by the response at a frequency in Hz. */
    ComplexProduct at(ComplexProduct p, double f) {
        double angle = sampleRateHz > 0 ? -2 * Math.PI * f / sampleRateHz : 0;
        if (tap.length > 0) {
            double re = 0;
            double im = 0;
            for (int n = 0; n < tap.length; n++) {
                double a = angle * index[n];
                re += tap[n] * StrictMath.cos(a);
                im += tap[n] * StrictMath.sin(a);
            }
            p.times(re, im);
        }
        if (section.length > 0) {
            double c1 = StrictMath.cos(angle);
            double s1 = StrictMath.sin(angle);
            double c2 = c1 * c1 - s1 * s1;
            double s2 = 2 * c1 * s1;
            for (double[] s : section) {
                p.times(s[0] + s[1] * c1 + s[2] * c2, s[1] * s1 + s[2] * s2)
                    .over(1 + s[3] * c1 + s[4] * c2, s[3] * s1 + s[4] * s2);
            }
        }
        return p;
    }

    /** Largest delay among the taps, in samples. */
    public int longestDelay() {
        return Arrays.stream(index).max().orElse(0);
    }
}
