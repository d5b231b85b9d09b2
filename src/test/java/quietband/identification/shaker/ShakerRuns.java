package quietband.identification.shaker;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import quietband.model.Axis;
import quietband.model.Vec;
import quietband.oscillator.Sidebands;
import quietband.spectrum.LogGrid;

/** Runs on the shaker made from a known resonator: vector, one support resonance per axis, noise in dB. */
final class ShakerRuns {

    static final double CARRIER = 10e6;
    static final ShakerRules RULES = new ShakerRules(CARRIER, 1, Double.NaN, 6, 0);

    private ShakerRuns() { }

    /** Base-excited blank, written out anew: (1 + j r/Q)/(1 - r^2 + j r/Q); as real and imaginary part. */
    static double[] blank(double f, double fm, double q) {
        double r = f / fm;
        double d = r / q;
        double a = 1 - r * r;
        return new double[] {(a + d * d) / (a * a + d * d), (d * a - d) / (a * a + d * d)};
    }

    /** 10 Hz to 2 kHz in 30 steps at 10 g peak on every axis, with phases, scattered by so many dB. */
    static List<ShakerReading> run(String serial, Vec g, Vec supportHz, double q, double sigmaDb, long seed) {
        UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(source);
        List<ShakerReading> run = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            for (double f : LogGrid.between(30, 10, 2000)) {
                double[] h = blank(f, supportHz.get(axis), q);
                double y = g.get(axis) * Math.hypot(h[0], h[1]);
                double phase = Math.atan2(h[1], h[0]) + (y < 0 ? Math.PI : 0);
                double level = Sidebands.levelDbc(Sidebands.index(y, 10, CARRIER, f)) + sigmaDb * normal.sample();
                run.add(sideband(serial, axis, f, 10, level, phase));
            }
        }
        return run;
    }

    static ShakerReading sideband(String serial, Axis axis, double f, double peakG, double level, double phase) {
        return new ShakerReading(serial, 2, axis, f, peakG, level, phase, Double.NaN, Double.NaN, new double[3], false, 0, Double.NaN,
            Double.NaN);
    }

}
