package quietband.oscillator;

import quietband.model.Oscillator.Resonator;
import quietband.model.Resonance;
import quietband.model.Vec;

/** The resonator's response G_i H_m,i(f) to the acceleration of its mounting, in 1/g. */
public final class Sensitivity {

    private final Vec mounted;
    private final Resonance support;

    /** For one resonator. */
    public Sensitivity(Resonator resonator) {
        mounted = resonator.mountedSensitivityPerG();
        support = resonator.supportResonance();
    }

    /** G, the turned vector, 1/g. */
    public Vec mounted() {
        return mounted;
    }

    /**
     * Writes G_i H_m,i with H_m = (1 + j r/Q)/(1 - r^2 + j r/Q), r = f/f_m: a blank of mass on its elastic, damped support.
     *
     * @param f  in Hz
     * @param re real part, length 3; modified
     * @param im imaginary part, length 3; modified
     */
    public void at(double f, double[] re, double[] im) {
        for (int i = 0; i < 3; i++) {
            double g = mounted.get(i);
            double r = f / support.frequencyHz().get(i);
            double d = r / support.q().get(i);
            double a = 1 - r * r;
            double size = a * a + d * d;
            re[i] = g * (a + d * d) / size;
            im[i] = g * (d * a - d) / size;
        }
    }
}
