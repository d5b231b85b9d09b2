package quietband.identification.shaker;

import java.util.Arrays;
import org.hipparchus.stat.StatUtils;
import org.hipparchus.stat.descriptive.moment.Mean;

/**
 * Finds the resonances in a measured magnitude: modes are added one by one while the fit gains more than chance would give,
 * n ln(SSR before/SSR after) above (new parameters) ln n + 9 (Schwarz's criterion with room for having looked at many places;
 * 1 instead of 9 for the slow rise to a support that resonates above the readings, which would bend the mean).
 */
final class ModeSearch {

    private static final int FEWEST = 8;
    private static final int MOST_MODES = 3;
    private static final double ROOM = 9;
    private static final double ROOM_BEYOND = 1;
    private static final double HIDDEN_Q = 1e6;
    private static final double[] Q = {4, 13, 40, 130};
    private static final double[] WHOLE = {1};
    private static final double[] SHARE = {-0.1, 0.05, 0.25, 1};
    /** Variance of ln|G| below which nothing is looked for: readings have digits, and 1e-4 dB is no resonance. */
    private static final double EXACT = 1e-10;

    private ModeSearch() { }

    /**
     * The fit with all modes that show.
     *
     * @param f      Hz, in any order
     * @param target ln of the magnitudes
     * @param weight of each squared deviation; one over its variance where that is known, else one
     */
    static ModeFit run(double[] f, double[] target, double[] weight) {
        ModeFit best = new ModeFit(f, target, weight, new double[] {new Mean().evaluate(target, weight)}, new boolean[1]);
        if (f.length < FEWEST) {
            return best;
        }
        double floor = EXACT * StatUtils.sum(weight);
        for (int modes = 0; modes < MOST_MODES && f.length > best.free() + 4; modes++) {
            ModeFit next = added(best, f, false);
            double gain = gain(best, next, floor, ROOM);
            if (modes == 0) {
                ModeFit support = added(best, f, true);
                ModeFit beyond = beyond(best, f);
                double gainSupport = gain(best, support, floor, ROOM);
                double gainBeyond = gain(best, beyond, floor, ROOM_BEYOND);
                next = gainSupport >= gain ? support : next;
                gain = Math.max(gain, gainSupport);
                next = gainBeyond >= gain ? beyond : next;
                gain = Math.max(gain, gainBeyond);
            }
            if (gain <= 0) {
                break;
            }
            best = next;
        }
        return best;
    }

    private static double gain(ModeFit before, ModeFit after, double floor, double room) {
        int more = after.free() - before.free();
        int n = before.size();
        return n * StrictMath.log((before.ssr() + floor) / (after.ssr() + floor)) - more * StrictMath.log(n) - room;
    }

    /** A support that resonates above the readings: they rise as 1/(1 - r^2), and its Q does not show. */
    private static ModeFit beyond(ModeFit base, double[] f) {
        double high = Arrays.stream(f).max().orElse(1);
        ModeFit best = null;
        for (double ratio = 1.1; ratio < 12; ratio *= 1.1) {
            ModeFit trial = base.with(ratio * high, HIDDEN_Q, 1, true).holdQ();
            best = best == null || trial.ssr() < best.ssr() ? trial : best;
        }
        return best.refine();
    }

    private static ModeFit added(ModeFit base, double[] f, boolean support) {
        double low = Arrays.stream(f).min().orElse(1);
        double high = Arrays.stream(f).max().orElse(1);
        double top = support ? 1.3 * high : high;
        int places = Math.max(40, (int) (30 * StrictMath.log10(top / low)));
        double[] best = {low, Q[0], 1};
        double least = Double.POSITIVE_INFINITY;
        Trial trial = new Trial(base);
        for (int k = 0; k <= places; k++) {
            double hz = low * StrictMath.pow(top / low, (double) k / places);
            for (double q : Q) {
                trial.mode(hz, q);
                for (double c : support ? WHOLE : SHARE) {
                    double ssr = trial.ssr(c);
                    if (ssr < least) {
                        least = ssr;
                        best = new double[] {hz, q, c};
                    }
                }
            }
        }
        return base.with(best[0], best[1], best[2], support).refine();
    }

    /** One mode more on a fit, tried quickly: G0 alone is fitted anew. */
    private static final class Trial {

        private final ModeFit base;
        private final double[] baseRe;
        private final double[] baseIm;
        private final double[] re;
        private final double[] im;

        Trial(ModeFit base) {
            this.base = base;
            int n = base.size();
            baseRe = new double[n];
            baseIm = new double[n];
            re = new double[n];
            im = new double[n];
            double[] modes = ModeFit.modes(base.parameters());
            for (int i = 0; i < n; i++) {
                double[] h = ModeFit.response(modes, base.frequency(i));
                baseRe[i] = h[0];
                baseIm[i] = h[1];
            }
        }

        void mode(double hz, double q) {
            double[] mode = {hz, q, 1};
            for (int i = 0; i < re.length; i++) {
                double[] h = ModeFit.response(mode, base.frequency(i));
                re[i] = h[0] - 1;
                im[i] = h[1];
            }
        }

        double ssr(double c) {
            double all = 0;
            double sum = 0;
            double squares = 0;
            for (int i = 0; i < re.length; i++) {
                double x = baseRe[i] + c * re[i];
                double y = baseIm[i] + c * im[i];
                double left = base.target(i) - 0.5 * StrictMath.log(x * x + y * y + 1e-300);
                double w = base.weight(i);
                all += w;
                sum += w * left;
                squares += w * left * left;
            }
            return squares - sum * sum / all;
        }
    }
}
