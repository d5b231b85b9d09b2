package quietband.response.travel;

import quietband.demand.PhaseNoise;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.platform.Assembly;
import quietband.platform.PlatformMotion;
import quietband.response.FrequencyIntegrals;
import quietband.response.ResidualResponse;
import quietband.response.SwingTransfer;
import quietband.spectrum.LogCurve;
import quietband.units.StandardGravity;

/**
 * What the random vibration makes of a design over the whole profile, as mean squares: the platform's six relative coordinates with
 * their covariances, from which the displacement of any point or spring follows, and the swing of sensors and cancellation.
 */
public final class RandomMotion {

    private static final int PAIRS = 21;
    private static final int SWING = 12;

    private final boolean together;
    private final double[] integral;

    private RandomMotion(boolean together, double[] integral) {
        this.together = together;
        this.integral = integral;
    }

    /** What is integrated over every driven profile for a design; its range is empty when nothing drives. */
    public static Part part(Design design, Assembly assembly, ResidualResponse response) {
        return new Part(design, assembly, response);
    }

    /** The integrands, in the order in which {@link #of} takes their integrals. */
    public static final class Part implements FrequencyIntegrals.Part {

        private final Design design;
        private final ResidualResponse response;
        private final boolean sprung;
        private final PhaseNoise density;
        private final SwingTransfer swing;
        private final double[] ends = {Double.POSITIVE_INFINITY, 0};
        private final double[] driven = new double[3];

        private Part(Design design, Assembly assembly, ResidualResponse response) {
            this.design = design;
            this.response = response;
            sprung = assembly != null;
            density = new PhaseNoise(design);
            swing = design.cancellation().isPresent() ? new SwingTransfer(response, Stack.fullest(design).sprung()) : null;
            for (Axis axis : Axis.ALL) {
                design.vibration().drive(axis).map(LogCurve::frequencies).ifPresent(f -> {
                    ends[0] = Math.min(ends[0], f[0]);
                    ends[1] = Math.max(ends[1], f[f.length - 1]);
                });
            }
        }

        @Override
        public int count() {
            return 3 * PAIRS + SWING;
        }

        @Override
        public double fromHz() {
            return ends[0];
        }

        @Override
        public double toHz() {
            return ends[1];
        }

        @Override
        public void at(double f, double[] into, int offset) {
            response.at(f);
            for (Axis axis : Axis.ALL) {
                driven[axis.ordinal()] = density.density(axis, f);
            }
            if (sprung) {
                coordinates(response.motion(), driven, into, offset);
            }
            if (swing != null) {
                double[] squared = swing.squared(f);
                for (int e = 0; e < SWING; e++) {
                    into[offset + 3 * PAIRS + e] = squared[e] * driven[e % 3];
                }
            }
        }

        /** The result from the integrals (length {@link #count()}). */
        public RandomMotion of(double[] integral) {
            return new RandomMotion(design.vibration().together(), integral);
        }
    }

    /** Re(R_a R_b*) S g0^2 for each drive and pair of coordinates. */
    private static void coordinates(PlatformMotion motion, double[] driven, double[] into, int offset) {
        double g2 = StandardGravity.M_PER_S2 * StandardGravity.M_PER_S2;
        int at = offset;
        for (int j = 0; j < 3; j++) {
            double scale = driven[j] * g2;
            for (int a = 0; a < 6; a++) {
                for (int b = 0; b <= a; b++) {
                    into[at++] = scale * (motion.relativeRe(a, j) * motion.relativeRe(b, j)
                        + motion.relativeIm(a, j) * motion.relativeIm(b, j));
                }
            }
        }
    }

    /**
     * Standard deviation of a combination of the six relative coordinates, m: over all drives when they act together, else
     * for the drive that moves it most.
     *
     * @param rows coefficients; six of them from {@code from} on are used
     */
    double sigma(double[] rows, int from) {
        double all = 0;
        double most = 0;
        for (int j = 0; j < 3; j++) {
            double sum = 0;
            int at = j * PAIRS;
            for (int a = 0; a < 6; a++) {
                for (int b = 0; b <= a; b++) {
                    sum += (a == b ? 1 : 2) * rows[from + a] * rows[from + b] * integral[at++];
                }
            }
            all += sum;
            most = Math.max(most, sum);
        }
        return Math.sqrt(Math.max(0, together ? all : most));
    }

    /** Mean square of a sensor (row 0 to 2, g^2) or of the cancellation (row 3) for a drive axis. */
    public double swing(int row, int drive) {
        return integral[3 * PAIRS + 3 * row + drive];
    }
}
