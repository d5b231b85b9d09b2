package quietband.study.motion;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.motion.run.VibrationRun;
import quietband.spectrum.Welch;

/**
 * How a density estimated in the time domain stands to the one predicted in the frequency domain, S_y = sum |y_j|^2 S_a,j.
 *
 * @param stack        which
 * @param share        share of the frequencies whose prediction lies in the estimate's 95 % interval, 0 to 1
 * @param frequencies  how many there are
 * @param rms          estimated rms fractional frequency over the band
 * @param predictedRms predicted
 * @param standardError of the estimated rms
 * @param octave       the octave whose mean ratio of estimate to prediction is farthest from 1, by its lower end in Hz
 * @param octaveRatio  that mean ratio of densities
 * @param octaveError  its standard error
 * @param jitterRad    rms phase at the output over the band that the estimate makes, rad
 */
public record SpectrumAgreement(Stack stack, double share, int frequencies, double rms, double predictedRms, double standardError,
                        double octave, double octaveRatio, double octaveError, double jitterRad) {

    // neighbouring frequencies behind a Hann window: correlation of their densities 4/9 and 1/36 each way
    private static final double NEIGHBOURS = 1 + 2 * (4.0 / 9 + 1.0 / 36);
    private static final int EDGE_BINS = 3;
    // what the window's width does to a curved spectrum, of a density
    private static final double BIAS = 0.01;

    /** Whether the two agree: nine tenths of the frequencies inside, rms and every octave within three standard errors. */
    public boolean holds() {
        return share >= 0.9 && Math.abs(rms - predictedRms) <= 3 * standardError + BIAS / 2 * predictedRms
            && Math.abs(octaveRatio - 1) <= 3.5 * octaveError + BIAS;
    }

    /** Compares over the frequencies of the band that all driven profiles cover. */
    public static List<SpectrumAgreement> of(Design design, VibrationRun.Result ride, PredictedSpectrum prediction) {
        Welch w = ride.spectra().orElseThrow();
        double from = design.requirement().fromHz();
        double to = design.requirement().toHz();
        for (Axis a : prediction.axes()) {
            double[] f = design.vibration().random().get(a.ordinal()).orElseThrow().frequencies();
            from = Math.max(from, f[0] + EDGE_BINS * w.resolutionHz());
            to = Math.min(to, f[f.length - 1] - EDGE_BINS * w.resolutionHz());
        }
        ChiSquaredDistribution chi = new ChiSquaredDistribution(w.degreesOfFreedom());
        double low = chi.inverseCumulativeProbability(0.025) / w.degreesOfFreedom();
        double high = chi.inverseCumulativeProbability(0.975) / w.degreesOfFreedom();
        List<SpectrumAgreement> list = new ArrayList<>();
        for (int s = 0; s < ride.stacks().size(); s++) {
            int inside = 0;
            int count = 0;
            double[] sums = new double[4];
            Octaves octaves = new Octaves(from, w.degreesOfFreedom());
            for (int k = (int) Math.ceil(from / w.resolutionHz()); k * w.resolutionHz() <= to && k < w.bins(); k++) {
                double f = k * w.resolutionHz();
                double predicted = prediction.density()[s][k];
                double estimated = w.density(3 + s, k);
                inside += estimated >= low * predicted && estimated <= high * predicted ? 1 : 0;
                count++;
                octaves.add(f, estimated / predicted);
                sums[0] += estimated * w.resolutionHz();
                sums[1] += predicted * w.resolutionHz();
                sums[2] += predicted * predicted * w.resolutionHz() * w.resolutionHz();
                double n = design.oscillator().outputHz() / f;
                sums[3] += n * n * estimated * w.resolutionHz();
            }
            double error = Math.sqrt(sums[2] * NEIGHBOURS * 2 / w.degreesOfFreedom()) / (2 * Math.sqrt(sums[1]));
            list.add(new SpectrumAgreement(ride.stacks().get(s), count == 0 ? Double.NaN : (double) inside / count, count,
                Math.sqrt(sums[0]), Math.sqrt(sums[1]), error, octaves.worstFrom(), octaves.worstRatio(), octaves.worstError(),
                Math.sqrt(sums[3])));
        }
        return list;
    }

    /** Mean ratios by octave. */
    private static final class Octaves {

        private final double from;
        private final double degrees;
        private final double[] sum = new double[40];
        private final int[] count = new int[40];

        Octaves(double from, double degrees) {
            this.from = from;
            this.degrees = degrees;
        }

        void add(double f, double ratio) {
            int o = (int) Math.floor(Math.log(f / from) / Math.log(2) + 1e-9);
            sum[o] += ratio;
            count[o]++;
        }

        private int worst() {
            int worst = 0;
            for (int o = 0; o < sum.length; o++) {
                worst = count[o] > 0 && off(o) > off(worst) ? o : worst;
            }
            return worst;
        }

        private double off(int o) {
            return count[o] == 0 ? 0 : Math.abs(sum[o] / count[o] - 1) / error(o);
        }

        private double error(int o) {
            return Math.sqrt(2 / degrees * NEIGHBOURS / Math.max(1, count[o]));
        }

        double worstFrom() {
            return from * Math.pow(2, worst());
        }

        double worstRatio() {
            return sum[worst()] / Math.max(1, count[worst()]);
        }

        double worstError() {
            return error(worst());
        }
    }
}
