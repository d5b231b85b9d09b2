package quietband.response;

import java.util.TreeSet;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.platform.Assembly;
import quietband.platform.PlatformMotion;
import quietband.spectrum.LogCurve;
import quietband.spectrum.Quadrature;
import quietband.units.StandardGravity;

/**
 * What the random vibration makes of a design over the whole profile, as mean squares: the platform's six relative coordinates with
 * their covariances, from which the displacement of any point or spring follows, and the swing of sensors and correction.
 */
final class RandomMotion {

    private static final int PAIRS = 21;
    private static final int SWING = 12;

    private final boolean together;
    private final double[] integral;

    private RandomMotion(boolean together, double[] integral) {
        this.together = together;
        this.integral = integral;
    }

    /** Integrates over every driven profile on a grid seeded with the resonances, with a node at every end and kink. */
    static RandomMotion of(Design design, Assembly assembly, ResidualResponse response) {
        int count = 3 * PAIRS + SWING;
        double[] grid = profileGrid(design, assembly);
        if (grid.length < 2) {
            return new RandomMotion(design.vibration().together(), new double[count]);
        }
        PhaseNoise density = new PhaseNoise(design);
        Swing swing = design.cancellation().isPresent() ? new Swing(response, Stack.fullest(design).sprung()) : null;
        double[] driven = new double[3];
        double[] integral = Quadrature.integrate(grid, count, (f, into) -> {
            response.at(f);
            for (Axis axis : Axis.ALL) {
                driven[axis.ordinal()] = density.density(axis, f);
            }
            if (assembly != null) {
                coordinates(response.motion(), driven, into);
            }
            if (swing != null) {
                double[] squared = swing.squared(f);
                for (int e = 0; e < SWING; e++) {
                    into[3 * PAIRS + e] = squared[e] * driven[e % 3];
                }
            }
        });
        return new RandomMotion(design.vibration().together(), integral);
    }

    private static double[] profileGrid(Design design, Assembly assembly) {
        TreeSet<Double> ends = new TreeSet<>();
        for (Axis axis : Axis.ALL) {
            design.vibration().drive(axis).map(LogCurve::frequencies).ifPresent(f -> {
                ends.add(f[0]);
                ends.add(f[f.length - 1]);
            });
        }
        return ends.size() < 2 ? new double[0] : new Seeds(design, assembly).between(ends.first(), ends.last());
    }

    /** Re(R_a R_b*) S g0^2 for each drive and pair of coordinates. */
    private static void coordinates(PlatformMotion motion, double[] driven, double[] into) {
        double g2 = StandardGravity.M_PER_S2 * StandardGravity.M_PER_S2;
        int at = 0;
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

    /** Mean square of a sensor (row 0 to 2, g^2) or of the correction (row 3) for a drive axis. */
    double swing(int row, int drive) {
        return integral[3 * PAIRS + 3 * row + drive];
    }
}
