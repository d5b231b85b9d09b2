package quietband.tolerance.kernel;

import java.util.Arrays;
import org.hipparchus.complex.Complex;
import quietband.cancellation.CancellationPath;
import quietband.demand.Decibels;
import quietband.demand.PhaseNoise;
import quietband.demand.ResidualDemand;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Resonance;
import quietband.oscillator.Sensitivity;
import quietband.oscillator.Sidebands;
import quietband.spectrum.ComplexProduct;

/**
 * Some frequencies and everything at them that units share: path and support resonance as the design has them, limits, densities,
 * noise. Arrays are not copied.
 */
public final class FrequencyBlock {

    /** What a power is multiplied by where nothing at all is allowed. */
    public static final double MOST = 1e300;

    /** How many frequencies are nodes, and how many there are with those beside them, which come last. */
    public final int n;
    public final int lanes;
    public final double[] f;
    final double[] w;
    public final double[] w2;
    final double top;
    /** Support resonance per axis; null when there is none. */
    double[][] hr;
    double[][] hi;
    /** Path of each axis without gain error, the design's latency and delay error counted; null without a cancellation. */
    double[][] pr;
    double[][] pi;
    /** The same without the sensor. */
    double[][] afterRe;
    double[][] afterIm;
    /**
     * What a power is multiplied by to be over the residual limit's, per axis, of the vector in the first when that is judged;
     * g^2, 0 where the limit is infinite, finite where it is 0. Without a limit it is 1 (ppb/g)^2.
     */
    public final double[][] overLimit = new double[3][];
    /** Driving density per axis, g^2/Hz. */
    public final double[][] density = new double[3][];
    /** |path after the sensor|^2 and |filter hold tuning|^2 per axis, |tuning|^2, each as phase noise. */
    public double[][] after2;
    public double[][] digital2;
    public double[] port2;
    /** Phase noise at rest and its limit at the output, as power ratios per Hz; the limit is null when none is stated. */
    public final double[] staticNoise;
    public double[] noiseLimit;
    /** 1/noiseLimit, and the phase noise of a power under an axis's density over noiseLimit; null when none is stated. */
    public double[] overNoise;
    public final double[][] drivenOverNoise = new double[3][];
    /** The phase noise of a power under an axis's density. */
    public final double[][] driven = new double[3][];
    /** f0^2/(2 f^2): from a density of fractional frequency to phase noise. */
    final double[] toPhase;

    /**
     * Works out what units share.
     *
     * @param frequencies the nodes, rising, and then what is looked at beside them
     * @param nodes       how many are nodes
     */
    FrequencyBlock(double[] frequencies, int nodes, Design design) {
        f = frequencies;
        n = nodes;
        lanes = f.length;
        w = new double[lanes];
        w2 = new double[lanes];
        staticNoise = new double[lanes];
        toPhase = new double[lanes];
        for (int t = 0; t < lanes; t++) {
            w[t] = 2 * Math.PI * f[t];
            w2[t] = w[t] * w[t];
        }
        top = Arrays.stream(w).max().orElseThrow();
        Resonance support = design.oscillator().resonator().supportResonance();
        if (support.on(0) || support.on(1) || support.on(2)) {
            hr = new double[3][lanes];
            hi = new double[3][lanes];
            support(support, hr, hi);
        }
        design.cancellation().ifPresent(this::path);
        noise(design);
        limit(design);
    }

    /** H of the resonator's support ({@link Sensitivity#supported}) per axis, into arrays of length n. */
    void support(Resonance support, double[][] re, double[][] im) {
        ComplexProduct h = new ComplexProduct();
        for (int i = 0; i < 3; i++) {
            for (int t = 0; t < lanes; t++) {
                Sensitivity.supported(h.set(1, 0), support, i, f[t]);
                re[i][t] = h.re();
                im[i][t] = h.im();
            }
        }
    }

    private void path(Cancellation c) {
        CancellationPath path = new CancellationPath(c);
        pr = new double[3][lanes];
        pi = new double[3][lanes];
        afterRe = new double[3][lanes];
        afterIm = new double[3][lanes];
        after2 = new double[3][lanes];
        digital2 = new double[3][lanes];
        port2 = new double[lanes];
        for (int t = 0; t < lanes; t++) {
            port2[t] = path.tuningPower(f[t]);
            for (int i = 0; i < 3; i++) {
                Complex after = path.afterSensor(i, f[t]).multiply(path.delay(i, f[t]));
                afterRe[i][t] = after.getReal();
                afterIm[i][t] = after.getImaginary();
                Complex p = path.sensor(i, f[t]).multiply(after);
                pr[i][t] = p.getReal();
                pi[i][t] = p.getImaginary();
                after2[i][t] = path.afterSensorPower(i, f[t]);
                digital2[i][t] = path.digitalPower(i, f[t]);
            }
        }
    }

    private void noise(Design design) {
        PhaseNoise noise = new PhaseNoise(design);
        for (int t = 0; t < lanes; t++) {
            staticNoise[t] = noise.staticNoise(f[t]);
            toPhase[t] = Sidebands.phaseNoise(1, design.oscillator().outputHz(), f[t]);
        }
        for (Axis axis : Axis.ALL) {
            double[] g2 = new double[lanes];
            for (int t = 0; t < lanes; t++) {
                g2[t] = noise.density(axis, f[t]);
            }
            density[axis.ordinal()] = g2;
            driven[axis.ordinal()] = times(g2, toPhase);
        }
        if (design.cancellation().isPresent()) {
            port2 = times(port2, toPhase);
            for (int i = 0; i < 3; i++) {
                after2[i] = times(after2[i], toPhase);
                digital2[i] = times(digital2[i], toPhase);
            }
        }
        if (design.requirement().phaseNoise().isPresent()) {
            noiseLimit = new double[lanes];
            overNoise = new double[lanes];
            for (int t = 0; t < lanes; t++) {
                noiseLimit[t] = Decibels.power(noise.limitDbc(f[t]).orElseThrow());
                overNoise[t] = 1 / noiseLimit[t];
            }
            for (int i = 0; i < 3; i++) {
                drivenOverNoise[i] = times(driven[i], overNoise);
            }
        }
    }

    private static double[] times(double[] x, double[] y) {
        double[] product = new double[x.length];
        for (int t = 0; t < product.length; t++) {
            product[t] = x[t] * y[t];
        }
        return product;
    }

    private void limit(Design design) {
        ResidualDemand demand = new ResidualDemand(design);
        for (Axis axis : Axis.ALL) {
            double[] over = new double[lanes];
            overLimit[axis.ordinal()] = over;
            for (int t = 0; t < lanes; t++) {
                double l = demand.limit(axis.ordinal(), f[t]);
                over[t] = Math.min(MOST, 1 / (l * l));
            }
        }
    }
}
