package quietband.tolerance;

import org.hipparchus.complex.Complex;
import quietband.cancellation.CorrectionPath;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Resonance;
import quietband.oscillator.Sidebands;
import quietband.response.PhaseNoise;
import quietband.response.ResidualLimit;

/**
 * Some frequencies and everything at them that units share: path and support resonance as the design has them, limits, densities,
 * noise. Arrays are not copied.
 */
final class Block {

    final int n;
    final double[] f;
    final double[] w;
    final double[] w2;
    final double top;
    /** Functions of springs with mass that units expand around, by family; empty without tables. */
    final LineFunctions[] lines;
    /** Support resonance per axis; null when there is none. */
    double[][] hr;
    double[][] hi;
    /** Path of each axis without gain error, the design's latency and delay error counted; null without a correction. */
    double[][] pr;
    double[][] pi;
    /** Square of the residual limit per axis, of the vector in the first when that is judged; 1/g^2; null when none is asked. */
    double[][] limit2;
    /** Driving density per axis, g^2/Hz. */
    final double[][] density = new double[3][];
    /** |path after the sensor|^2 and |filter hold tuning|^2 per axis, |tuning|^2. */
    double[][] after2;
    double[][] digital2;
    double[] port2;
    /** Phase noise at rest and its limit at the output, as power ratios per Hz; the limit is null when none is asked. */
    final double[] quiet;
    double[] noiseLimit;
    /** f0^2/(2 f^2): from a density of fractional frequency to phase noise. */
    final double[] toPhase;

    Block(double[] frequencies, Design design, LineTables tables) {
        f = frequencies;
        n = f.length;
        w = new double[n];
        w2 = new double[n];
        quiet = new double[n];
        toPhase = new double[n];
        for (int t = 0; t < n; t++) {
            w[t] = 2 * Math.PI * f[t];
            w2[t] = w[t] * w[t];
        }
        top = w[n - 1];
        lines = tables.on(w2, top, n);
        Resonance support = design.oscillator().resonator().supportResonance();
        if (support.on(0) || support.on(1) || support.on(2)) {
            hr = new double[3][n];
            hi = new double[3][n];
            support(support, hr, hi);
        }
        design.cancellation().ifPresent(this::path);
        noise(design);
        limit(design);
    }

    /** H = (1 + j r/Q)/(1 - r^2 + j r/Q) per axis, into arrays of length n. */
    void support(Resonance support, double[][] re, double[][] im) {
        for (int i = 0; i < 3; i++) {
            double fm = support.frequencyHz().get(i);
            double q = support.q().get(i);
            for (int t = 0; t < n; t++) {
                double r = f[t] / fm;
                double d = r / q;
                double a = 1 - r * r;
                double s = a * a + d * d;
                re[i][t] = (a + d * d) / s;
                im[i][t] = (d * a - d) / s;
            }
        }
    }

    private void path(Cancellation c) {
        CorrectionPath path = new CorrectionPath(c);
        pr = new double[3][n];
        pi = new double[3][n];
        after2 = new double[3][n];
        digital2 = new double[3][n];
        port2 = new double[n];
        for (int t = 0; t < n; t++) {
            double pole = path.tuningPole(f[t]).norm();
            port2[t] = pole * pole;
            for (int i = 0; i < 3; i++) {
                Complex after = path.afterSensor(i, f[t]);
                Complex p = path.sensor(i, f[t]).multiply(after).multiply(path.delay(i, f[t]));
                pr[i][t] = p.getReal();
                pi[i][t] = p.getImaginary();
                after2[i][t] = after.getReal() * after.getReal() + after.getImaginary() * after.getImaginary();
                double digital = path.filterAndHold(i, f[t]).norm() * pole;
                digital2[i][t] = digital * digital;
            }
        }
    }

    private void noise(Design design) {
        PhaseNoise noise = new PhaseNoise(design);
        for (Axis axis : Axis.ALL) {
            density[axis.ordinal()] = new double[n];
            for (int t = 0; t < n; t++) {
                density[axis.ordinal()][t] = noise.density(axis, f[t]);
            }
        }
        boolean asked = design.requirement().phaseNoise().isPresent();
        noiseLimit = asked ? new double[n] : null;
        for (int t = 0; t < n; t++) {
            quiet[t] = noise.quiet(f[t]);
            toPhase[t] = Sidebands.phaseNoise(1, design.oscillator().outputHz(), f[t]);
            if (asked) {
                noiseLimit[t] = StrictMath.pow(10, noise.limitDbc(f[t]).orElseThrow() / 10);
            }
        }
    }

    private void limit(Design design) {
        ResidualLimit limit = new ResidualLimit(design);
        if (!limit.asked()) {
            return;
        }
        limit2 = new double[3][n];
        for (int t = 0; t < n; t++) {
            for (Axis axis : Axis.ALL) {
                double l = design.requirement().byVector() ? limit.vector(f[t]) : limit.at(axis, f[t]);
                limit2[axis.ordinal()][t] = l * l;
            }
        }
    }
}
