package quietband.response.travel;

import java.util.Arrays;
import quietband.demand.PhaseNoise;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.platform.Assembly;
import quietband.platform.CoordinateCovariance;
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

    /** Standard deviations that count as the peak of random motion. */
    public static final double SIGMAS = 3;

    private static final int COORDINATES = 3 * CoordinateCovariance.PAIRS;
    private static final int SWING = 12;
    private static final double G2 = StandardGravity.M_PER_S2 * StandardGravity.M_PER_S2;

    private final boolean together;
    private final double[] integral;

    /** From the integrals of {@link #part}. */
    public RandomMotion(boolean together, double[] integral) {
        this.together = together;
        this.integral = integral;
    }

    /** Nothing moves yet: to be summed up by {@link #move} and {@link #swing}. */
    public RandomMotion(boolean together) {
        this(together, new double[COORDINATES + SWING]);
    }

    /** Adds coordinates of the platform, m per m/s^2 of a drive axis, for a mean square in g^2. */
    public void move(int drive, double square, double[] re, double[] im) {
        CoordinateCovariance.add(square * G2, re, im, integral, drive * CoordinateCovariance.PAIRS);
    }

    /** Adds a mean square to that of a sensor (row 0 to 2, g^2) or of the cancellation (row 3) for a drive axis. */
    public void swing(int row, int drive, double square) {
        integral[COORDINATES + 3 * row + drive] += square;
    }

    /** What is integrated over every driven profile for a design; its range is empty when nothing drives. */
    public static FrequencyIntegrals.Part part(Design design, Assembly assembly, ResidualResponse response) {
        PhaseNoise density = new PhaseNoise(design);
        SwingTransfer swing = design.cancellation().isPresent() ? new SwingTransfer(response, Stack.fullest(design).sprung()) : null;
        double[] ends = {Double.POSITIVE_INFINITY, 0};
        for (Axis axis : Axis.ALL) {
            design.vibration().drive(axis).map(LogCurve::frequencies).ifPresent(f -> {
                ends[0] = Math.min(ends[0], f[0]);
                ends[1] = Math.max(ends[1], f[f.length - 1]);
            });
        }
        double[] driven = new double[3];
        double[] re = new double[6];
        double[] im = new double[6];
        return new FrequencyIntegrals.Part(COORDINATES + SWING, ends[0], ends[1], (f, into, offset) -> {
            response.at(f);
            for (Axis axis : Axis.ALL) {
                driven[axis.ordinal()] = density.density(axis, f);
            }
            Arrays.fill(into, offset, offset + COORDINATES, 0);
            for (int j = 0; assembly != null && j < 3; j++) {
                for (int a = 0; a < 6; a++) {
                    re[a] = response.motion().relativeRe(a, j);
                    im[a] = response.motion().relativeIm(a, j);
                }
                CoordinateCovariance.add(driven[j] * G2, re, im, into, offset + j * CoordinateCovariance.PAIRS);
            }
            if (swing != null) {
                double[] squared = swing.squared(f);
                for (int e = 0; e < SWING; e++) {
                    into[offset + COORDINATES + e] = squared[e] * driven[e % 3];
                }
            }
        });
    }

    /**
     * Peak of a combination of the six relative coordinates, three standard deviations, m: over all drives when they act together,
     * else for the drive that moves it most.
     *
     * @param rows coefficients; six of them from {@code from} on are used
     */
    double peak(double[] rows, int from) {
        double all = 0;
        double most = 0;
        for (int j = 0; j < 3; j++) {
            double square = CoordinateCovariance.variance(rows, from, integral, j * CoordinateCovariance.PAIRS);
            all += square;
            most = Math.max(most, square);
        }
        return SIGMAS * Math.sqrt(Math.max(0, together ? all : most));
    }

    /**
     * Peak swing of a sensor (row 0 to 2, g) or of the cancellation (row 3): three standard deviations plus the tones' peaks. Together
     * the drives' mean squares add up and so do the peaks; else the drive that swings it most counts.
     *
     * @param tones sum of the tones' peaks, row by row a drive axis each (length 12)
     */
    public double swingPeak(int row, double[] tones) {
        double square = 0;
        double peaks = 0;
        double most = 0;
        for (int j = 0; j < 3; j++) {
            square += swing(row, j);
            peaks += tones[3 * row + j];
            most = Math.max(most, SIGMAS * Math.sqrt(swing(row, j)) + tones[3 * row + j]);
        }
        return together ? SIGMAS * Math.sqrt(square) + peaks : most;
    }

    /** Mean square of a sensor (row 0 to 2, g^2) or of the cancellation (row 3) for a drive axis. */
    public double swing(int row, int drive) {
        return integral[COORDINATES + 3 * row + drive];
    }
}
