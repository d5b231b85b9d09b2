package quietband.cancellation;

import org.hipparchus.complex.Complex;
import quietband.model.DigitalFilter;

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
        double angle = sampleRateHz > 0 ? -2 * Math.PI * f / sampleRateHz : 0;
        Complex value = Complex.ONE;
        if (tap.length > 0) {
            double re = 0;
            double im = 0;
            for (int n = 0; n < tap.length; n++) {
                double a = angle * index[n];
                re += tap[n] * StrictMath.cos(a);
                im += tap[n] * StrictMath.sin(a);
            }
            value = new Complex(re, im);
        }
        if (section.length > 0) {
            Complex z1 = new Complex(StrictMath.cos(angle), StrictMath.sin(angle));
            Complex z2 = z1.square();
            for (double[] s : section) {
                Complex up = z1.multiply(s[1]).add(z2.multiply(s[2])).add(s[0]);
                Complex down = z1.multiply(s[3]).add(z2.multiply(s[4])).add(1);
                value = value.multiply(up).divide(down);
            }
        }
        return value;
    }

    /** Largest delay among the taps, in samples. */
    public int longestDelay() {
        int longest = 0;
        for (int i : index) {
            longest = Math.max(longest, i);
        }
        return longest;
    }
}
