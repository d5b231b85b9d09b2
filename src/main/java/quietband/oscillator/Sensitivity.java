package quietband.oscillator;

import quietband.model.Oscillator.Resonator;
import quietband.model.Resonance;
import quietband.model.Vec;
import quietband.spectrum.ComplexProduct;

/** The resonator's response G_i H_m,i(f) to the acceleration of its mounting, in 1/g. */
public final class Sensitivity {

    private final Vec mounted;
    private final Resonance support;
    private final ComplexProduct product = new ComplexProduct();

    /** For one resonator. */
    public Sensitivity(Resonator resonator) {
        mounted = resonator.mountedSensitivityPerG();
        support = resonator.supportResonance();
    }

    /** G, the turned vector, 1/g. */
    public Vec mounted() {
        return mounted;
    }

    /** Multiplies by H_m of an axis, r = f/f_m: a blank of mass on its elastic, damped support. */
    public static ComplexProduct supported(ComplexProduct p, Resonance support, int axis, double f) {
        return p.transmissibility(f / support.frequencyHz().get(axis), support.q().get(axis));
    }

    /**
     * Writes G_i H_m,i at a frequency.
     *
     * @param f  in Hz
     * @param re real part, length 3; modified
     * @param im imaginary part, length 3; modified
     */
    public void at(double f, double[] re, double[] im) {
        for (int i = 0; i < 3; i++) {
            supported(product.set(mounted.get(i), 0), support, i, f);
            re[i] = product.re();
            im[i] = product.im();
        }
    }
}
