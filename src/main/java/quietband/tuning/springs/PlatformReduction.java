package quietband.tuning.springs;

import org.hipparchus.analysis.solvers.BisectionSolver;
import quietband.model.Design;
import quietband.model.Vec;
import quietband.platform.Assembly;
import quietband.platform.AxisFrequencies;
import quietband.platform.PlatformMotion;
import quietband.response.DesignGrid;
import quietband.spectrum.Magnitudes;
import quietband.tuning.parts.PlatformNumbers;

/** What the platform takes away from the resonator's acceleration. */
final class PlatformReduction {

    private PlatformReduction() { }

    /**
     * The least reduction over the axes from a frequency on, dB: minus 20 log10 of the resonator's acceleration (of all its components) for
     * a unit push along an axis.
     *
     * @param from Hz
     * @param to   Hz; above {@code from}
     */
    static double leastDb(Design design, double from, double to) {
        Assembly assembly = new Assembly(design.platform().orElseThrow());
        PlatformMotion motion = new PlatformMotion(assembly);
        double most = 0;
        for (double f : DesignGrid.of(design, assembly, from, to)) {
            most = Math.max(most, largest(motion, design.oscillator().resonator().position(), f));
        }
        return -20 * StrictMath.log10(most);
    }

    private static double largest(PlatformMotion motion, Vec at, double f) {
        double[] re = new double[9];
        double[] im = new double[9];
        motion.at(f);
        motion.accelerationOf(at, re, im);
        Magnitudes.squared(re, re, im, 9);
        double most = 0;
        for (int j = 0; j < 3; j++) {
            double sum = 0;
            for (int i = 0; i < 3; i++) {
                sum += re[3 * i + j];
            }
            most = Math.max(most, Math.sqrt(sum));
        }
        return most;
    }

    /**
     * The frequency over the natural frequency from which on the platform takes a tenth away from every axis, its springs taken
     * without mass;
     * NaN where damping keeps it from that.
     */
    static double tenfold(Design design) {
        PlatformNumbers light = new PlatformNumbers(design);
        light.set("mass", "", -1, 0);
        Design plain = light.design();
        Assembly assembly = new Assembly(plain.platform().orElseThrow());
        Vec corner = AxisFrequencies.hz(assembly);
        double mean = StrictMath.cbrt(corner.x() * corner.y() * corner.z());
        PlatformMotion motion = new PlatformMotion(assembly);
        Vec at = design.oscillator().resonator().position();
        double ratio = 300;
        if (largest(motion, at, ratio * mean) > 0.1) {
            return Double.NaN;
        }
        while (ratio > 1 && largest(motion, at, ratio * mean) <= 0.1) {
            ratio /= 1.01;
        }
        return new BisectionSolver(1e-12).solve(100, r -> largest(motion, at, r * mean) - 0.1, ratio, ratio * 1.01);
    }
}
