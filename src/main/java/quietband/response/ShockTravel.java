package quietband.response;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import quietband.model.Axis;
import quietband.model.Vec;
import quietband.model.Vibration.Shock;
import quietband.platform.Assembly;
import quietband.platform.Lever;
import quietband.platform.RelativeMotion;
import quietband.units.StandardGravity;
import quietband.vibration.Pulse;

/**
 * Peak displacement under a shock from rest. The platform's equations are joined with those of the pulse (a'' = -omega^2 a)
 * and stepped with their exact matrix exponential; between steps a cubic through values and rates finds the peaks.
 */
final class ShockTravel {

    private static final double STEPS_PER_PERIOD = 64;
    private static final double PERIODS_AFTER = 12;
    private static final int MOST_STEPS = 60_000;

    private final Assembly assembly;
    private final RelativeMotion motion;
    private final Map<List<Double>, double[][]> exponentials = new HashMap<>();

    private final double periods;
    private final double stepsPerPeriod;

    ShockTravel(Assembly assembly) {
        this(assembly, PERIODS_AFTER, STEPS_PER_PERIOD);
    }

    /** With another number of periods of the lowest mode after the pulse, and of steps in one of the highest. */
    ShockTravel(Assembly assembly, double periods, double stepsPerPeriod) {
        this.assembly = assembly;
        this.periods = periods;
        this.stepsPerPeriod = stepsPerPeriod;
        this.motion = new RelativeMotion(assembly);
    }

    /**
     * Largest |component| over the points, m, during the pulse and for some periods (12 unless said) of the lowest mode after it.
     */
    Vec peak(Shock shock, Axis axis, List<Vec> points) {
        Tracker tracker = new Tracker(assembly, points);
        double[] x = new double[motion.order() + 2];
        double fastest = 2 * Math.PI / assembly.modes().omega(5) / stepsPerPeriod;
        for (Pulse.Piece piece : new Pulse(shock).pieces()) {
            x[motion.order()] = piece.startG() * StandardGravity.M_PER_S2;
            x[motion.order() + 1] = piece.slopeG() * StandardGravity.M_PER_S2;
            double step = Math.min(fastest, piece.duration() / stepsPerPeriod);
            run(x, axis, piece.omega(), piece.duration(), step, tracker);
        }
        x[motion.order()] = 0;
        x[motion.order() + 1] = 0;
        run(x, axis, 0, periods * 2 * Math.PI / assembly.modes().omega(0), fastest, tracker);
        return Vec.of(tracker.most);
    }

    private void run(double[] x, Axis axis, double omega, double duration, double wanted, Tracker tracker) {
        int steps = (int) Math.min(MOST_STEPS, Math.max(1, Math.ceil(duration / wanted)));
        double step = duration / steps;
        double[][] advance = advance(axis, omega, step);
        double[] next = new double[x.length];
        tracker.start(x);
        for (int s = 0; s < steps; s++) {
            for (int i = 0; i < x.length; i++) {
                double sum = 0;
                for (int j = 0; j < x.length; j++) {
                    sum += advance[i][j] * x[j];
                }
                next[i] = sum;
            }
            System.arraycopy(next, 0, x, 0, x.length);
            tracker.step(x, step);
        }
    }

    /** One axis's part of the step: the platform's states and the two of the pulse. */
    private double[][] advance(Axis axis, double omega, double step) {
        double[][] all = exponentials.computeIfAbsent(List.of(omega, step), key -> exponential(omega, step));
        int n = motion.order();
        int pulse = n + 2 * axis.ordinal();
        double[][] advance = new double[n + 2][n + 2];
        for (int i = 0; i < n + 2; i++) {
            double[] row = all[i < n ? i : pulse + i - n];
            System.arraycopy(row, 0, advance[i], 0, n);
            System.arraycopy(row, pulse, advance[i], n, 2);
        }
        return advance;
    }

    /** The step of the platform's states, joined with one pulse per axis: one exponential serves the three axes. */
    private double[][] exponential(double omega, double step) {
        int n = motion.order();
        RealMatrix joined = MatrixUtils.createRealMatrix(n + 6, n + 6);
        joined.setSubMatrix(motion.dynamics().getData(), 0, 0);
        for (Axis axis : Axis.ALL) {
            int pulse = n + 2 * axis.ordinal();
            for (int i = 0; i < n; i++) {
                joined.setEntry(i, pulse, motion.drive(i, axis.ordinal()));
            }
            joined.setEntry(pulse, pulse + 1, 1);
            joined.setEntry(pulse + 1, pulse, -omega * omega);
        }
        return MatrixUtils.matrixExponential(joined.scalarMultiply(step)).getData();
    }

    /** Follows the points and keeps the largest displacement per axis. */
    private static final class Tracker {

        private final double[][] rows;
        private final double[] u;
        private final double[] rate;
        private final double[] most = new double[3];

        Tracker(Assembly assembly, List<Vec> points) {
            rows = points.stream().map(p -> Lever.of(assembly.fromCentre(p))).toArray(double[][]::new);
            u = new double[3 * rows.length];
            rate = new double[3 * rows.length];
        }

        void start(double[] x) {
            for (int p = 0; p < rows.length; p++) {
                for (int i = 0; i < 3; i++) {
                    u[3 * p + i] = value(p, i, x, 0);
                    rate[3 * p + i] = value(p, i, x, 6);
                }
            }
        }

        void step(double[] x, double h) {
            for (int p = 0; p < rows.length; p++) {
                for (int i = 0; i < 3; i++) {
                    int at = 3 * p + i;
                    double u1 = value(p, i, x, 0);
                    double v1 = value(p, i, x, 6);
                    most[i] = Math.max(most[i], Math.abs(u1));
                    if (rate[at] * v1 < 0) {
                        most[i] = Math.max(most[i], turning(u[at], rate[at], u1, v1, h));
                    }
                    u[at] = u1;
                    rate[at] = v1;
                }
            }
        }

        private double value(int p, int i, double[] x, int from) {
            double sum = 0;
            for (int c = 0; c < 6; c++) {
                sum += rows[p][6 * i + c] * x[from + c];
            }
            return sum;
        }

        /** |u| where the cubic through values and rates turns between two steps. */
        private static double turning(double u0, double v0, double u1, double v1, double h) {
            // u(s) = u0 + v0 h s + c s^2 + d s^3 on 0..1
            double c = 3 * (u1 - u0) - h * (2 * v0 + v1);
            double d = 2 * (u0 - u1) + h * (v0 + v1);
            double root = Math.sqrt(Math.max(0, c * c - 3 * d * h * v0));
            double most = 0;
            for (double sign : new double[] {-1, 1}) {
                double s = Math.abs(d) < 1e-12 * Math.abs(c) ? -h * v0 / (2 * c) : (-c + sign * root) / (3 * d);
                if (s >= 0 && s <= 1) {
                    most = Math.max(most, Math.abs(u0 + s * (h * v0 + s * (c + s * d))));
                }
            }
            return most;
        }
    }
}
