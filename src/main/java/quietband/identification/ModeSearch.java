package quietband.identification;

/**
 * Finds the resonances in a measured magnitude: modes are added one by one while the fit gains more than chance would give,
 * n ln(SSR before/SSR after) above (new parameters) ln n + 9 (Schwarz's criterion with room for having looked at many places).
 */
final class ModeSearch {

    private static final int FEWEST = 8;
    private static final int MOST_MODES = 3;
    private static final double ROOM = 9;
    private static final double[] Q = {3, 6, 12, 25, 50, 100, 200};
    private static final double[] SHARE = {-0.3, -0.1, -0.03, 0.03, 0.1, 0.3, 1};
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
        double sum = 0;
        double all = 0;
        for (int i = 0; i < f.length; i++) {
            sum += weight[i] * target[i];
            all += weight[i];
        }
        ModeFit best = new ModeFit(f, target, weight, new double[] {sum / all}, new boolean[1]);
        if (f.length < FEWEST) {
            return best;
        }
        double floor = EXACT * all;
        for (int modes = 0; modes < MOST_MODES && f.length > best.free() + 4; modes++) {
            ModeFit support = modes == 0 ? added(best, f, true) : null;
            ModeFit any = added(best, f, false);
            double gainSupport = support == null ? 0 : gain(best, support, f.length, floor);
            double gainAny = gain(best, any, f.length, floor);
            if (Math.max(gainSupport, gainAny) <= 0) {
                break;
            }
            best = gainSupport >= gainAny ? support : any;
        }
        return best;
    }

    private static double gain(ModeFit before, ModeFit after, int n, double floor) {
        int more = after.free() - before.free();
        return n * StrictMath.log((before.ssr() + floor) / (after.ssr() + floor)) - more * StrictMath.log(n) - ROOM;
    }

    private static ModeFit added(ModeFit base, double[] f, boolean support) {
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        for (double v : f) {
            low = Math.min(low, v);
            high = Math.max(high, v);
        }
        double top = support ? 3 * high : high;
        int places = Math.max(40, (int) (30 * StrictMath.log10(top / low)));
        ModeFit best = null;
        for (int k = 0; k <= places; k++) {
            double hz = low * StrictMath.pow(top / low, (double) k / places);
            for (double q : Q) {
                for (double c : support ? new double[] {1} : SHARE) {
                    ModeFit trial = base.with(hz, q, c, support);
                    best = best == null || trial.ssr() < best.ssr() ? trial : best;
                }
            }
        }
        return best.refine();
    }
}
