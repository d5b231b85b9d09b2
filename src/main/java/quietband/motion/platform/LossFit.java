package quietband.motion.platform;

/**
 * A spring and a few Maxwell branches that stand for a constant loss factor eta over a band:
 * {@code k (1 + rest + sum g_m j w/(j w + corner_m)) ~ k (1 + j eta)}, every g_m at least 0 and 1 + rest above 0, so that it
 * never feeds energy in. No passive element has a constant loss and a constant stiffness (Kramers-Kronig): the fit is best around
 * the platform's own resonances, and {@link #worst} tells what it misses.
 */
public final class LossFit {

    private static final int ROUNDS = 4000;
    private static final int SAMPLES = 60;

    private final double eta;
    private final double[] corner;
    private final double[] x;
    private final double[] omega = new double[SAMPLES];
    private final double[] weight = new double[SAMPLES];

    /**
     * Fits by bounded least squares, coordinate by coordinate.
     *
     * @param eta     loss factor
     * @param lowest  lowest natural frequency, rad/s
     * @param highest highest of the six, rad/s
     * @param top     upper end of the band, rad/s
     */
    LossFit(double eta, double lowest, double highest, double top) {
        this.eta = eta;
        double from = lowest / 2;
        double to = Math.max(2 * highest, Math.min(top, 8 * highest));
        int branches = Math.max(3, (int) Math.ceil(2 * Math.log10(to / from)));
        corner = new double[branches];
        for (int m = 0; m < branches; m++) {
            corner[m] = from * Math.pow(to / from, (m + 0.5) / branches);
        }
        for (int i = 0; i < SAMPLES; i++) {
            omega[i] = from * Math.pow(Math.max(top, to) / from, i / (SAMPLES - 1.0));
            boolean near = omega[i] > 0.7 * lowest && omega[i] < 1.5 * highest;
            weight[i] = near ? 1 : omega[i] < lowest ? 0.1 : 0.25;
        }
        x = new double[1 + branches];
        solve();
    }

    private void solve() {
        double[][] re = new double[x.length][SAMPLES];
        double[][] im = new double[x.length][SAMPLES];
        for (int i = 0; i < SAMPLES; i++) {
            re[0][i] = weight[i];
            for (int m = 0; m < corner.length; m++) {
                double s = omega[i] * omega[i] + corner[m] * corner[m];
                re[1 + m][i] = weight[i] * omega[i] * omega[i] / s;
                im[1 + m][i] = weight[i] * omega[i] * corner[m] / s;
            }
        }
        double[] offRe = new double[SAMPLES];
        double[] offIm = new double[SAMPLES];
        for (int i = 0; i < SAMPLES; i++) {
            offIm[i] = -weight[i] * eta;
        }
        for (int round = 0; round < ROUNDS; round++) {
            for (int p = 0; p < x.length; p++) {
                double gradient = 0;
                double size = 0;
                for (int i = 0; i < SAMPLES; i++) {
                    gradient += offRe[i] * re[p][i] + offIm[i] * im[p][i];
                    size += re[p][i] * re[p][i] + im[p][i] * im[p][i];
                }
                double next = Math.max(p == 0 ? -0.9 : 0, x[p] - gradient / size);
                double change = next - x[p];
                x[p] = next;
                for (int i = 0; i < SAMPLES; i++) {
                    offRe[i] += change * re[p][i];
                    offIm[i] += change * im[p][i];
                }
            }
        }
    }

    /** What is added to the spring's own stiffness, relative to it; negative. */
    double rest() {
        return x[0];
    }

    /** Corners of the branches, rad/s; not copied. */
    double[] corners() {
        return corner;
    }

    /** Stiffness of branch m relative to the spring's. */
    double branch(int m) {
        return x[1 + m];
    }

    /** Largest |fit - (1 + j eta)|/|1 + j eta| between two frequencies, rad/s. */
    public double worst(double from, double to) {
        double worst = 0;
        for (int i = 0; i <= 100; i++) {
            double w = from * Math.pow(to / from, i / 100.0);
            double re = x[0];
            double im = -eta;
            for (int m = 0; m < corner.length; m++) {
                double s = w * w + corner[m] * corner[m];
                re += x[1 + m] * w * w / s;
                im += x[1 + m] * w * corner[m] / s;
            }
            worst = Math.max(worst, Math.hypot(re, im) / Math.hypot(1, eta));
        }
        return worst;
    }
}
