package quietband.cancellation;

import org.hipparchus.complex.Complex;
import quietband.model.Cancellation.Pass;
import quietband.spectrum.ComplexProduct;

/** Elements of the path as functions of frequency, beside a pole and a resonance ({@link ComplexProduct}). */
public final class AnalogElements {

    private AnalogElements() { }

    /**
     * Butterworth low pass of any order: the product over its poles p_k = exp(j pi (2k + n + 1)/(2n)), k = 0..n-1, of
     * 1/(1 - s/p_k) with s = j f/corner; 1 at zero frequency, 3.01 dB down at the corner.
     */
    public static Complex lowPass(double f, Pass pass) {
        return lowPass(new ComplexProduct(), f, pass).value();
    }

    static ComplexProduct lowPass(ComplexProduct p, double f, Pass pass) {
        return butterworth(p, f / pass.frequencyHz(), pass.order());
    }

    /** Butterworth high pass: the low pass with s replaced by 1/s. */
    public static Complex highPass(double f, Pass pass) {
        return highPass(new ComplexProduct(), f, pass).value();
    }

    static ComplexProduct highPass(ComplexProduct p, double f, Pass pass) {
        // 1/s = 1/(j r) = -j/r, so the ratio enters with a negative sign
        return butterworth(p, -pass.frequencyHz() / f, pass.order());
    }

    private static ComplexProduct butterworth(ComplexProduct p, double ratio, int order) {
        for (int k = 0; k < order; k++) {
            double angle = Math.PI * (2 * k + order + 1) / (2.0 * order);
            // s/p_k = j ratio exp(-j angle)
            p.over(1 - ratio * StrictMath.sin(angle), -ratio * StrictMath.cos(angle));
        }
        return p;
    }

    /** Zero-order hold over its gain at rest: sinc(f/fs) exp(-j pi f/fs). */
    public static Complex hold(double f, double sampleRateHz) {
        return hold(new ComplexProduct(), f, sampleRateHz).value();
    }

    static ComplexProduct hold(ComplexProduct p, double f, double sampleRateHz) {
        double u = Math.PI * f / sampleRateHz;
        double sin = StrictMath.sin(u);
        double sinc = u == 0 ? 1 : sin / u;
        return p.times(sinc * StrictMath.cos(u), -sinc * sin);
    }

    /** exp(-j 2 pi f delay). */
    public static Complex delay(double f, double delay) {
        return delay(new ComplexProduct(), f, delay).value();
    }

    static ComplexProduct delay(ComplexProduct p, double f, double delay) {
        return p.turn(-2 * Math.PI * f * delay);
    }
}
