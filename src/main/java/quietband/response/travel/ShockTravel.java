package quietband.response.travel;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.MatrixUtils;
import quietband.model.Axis;
import quietband.model.Vec;
import quietband.model.Vibration.Shock;
import quietband.platform.Assembly;
import quietband.platform.RelativeMotion;
import quietband.units.StandardGravity;
import quietband.vibration.Pulse;

/**
 * Peak displacement under a shock from rest. The platform's equations are joined with those of the pulse (a'' = -omega^2 a)
 * and stepped with their exact matrix exponential; between steps a polynomial through values, rates and accelerations finds the
 * peaks: with a step h and the highest natural frequency w within (w h)^6 / 46080 of its part.
 */
final class ShockTravel {

    static final double STEPS_PER_PERIOD = 20;

    private static final double PERIODS_AFTER = 12;
    private static final int MOST_STEPS = 60_000;

    private final Assembly assembly;
    private final RelativeMotion motion;
    private final double[][] dynamics;
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
        this.dynamics = motion.dynamics().getData();
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
        double[] motion = new double[18];
        tracker.start(motion(x, axis, motion));
        for (int s = 0; s < steps; s++) {
            for (int i = 0; i < x.length; i++) {
                next[i] = product(advance[i], x, x.length);
            }
            System.arraycopy(next, 0, x, 0, x.length);
            tracker.step(motion(x, axis, motion), step);
        }
    }

    /** Coordinates, rates and accelerations of a state. */
    private double[] motion(double[] x, Axis axis, double[] into) {
        System.arraycopy(x, 0, into, 0, 12);
        for (int c = 0; c < 6; c++) {
            into[12 + c] = product(dynamics[6 + c], x, motion.order()) + motion.drive(6 + c, axis.ordinal()) * x[motion.order()];
        }
        return into;
    }

    private static double product(double[] row, double[] x, int n) {
        double sum = 0;
        for (int j = 0; j < n; j++) {
            sum += row[j] * x[j];
        }
        return sum;
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

    /**
     * The step of the platform's states, joined with one pulse per axis: one exponential serves the three axes. It is taken with
     * each rate in the unit of its value times the highest natural frequency, so that all entries are of one size.
     */
    private double[][] exponential(double omega, double step) {
        int n = motion.order();
        double[] unit = new double[n + 6];
        double highest = assembly.modes().omega(5);
        for (int i = 0; i < unit.length; i++) {
            boolean rate = i >= 6 && i < 12;
            unit[i] = i < n ? rate ? highest : 1 : highest * highest * ((i - n) % 2 == 0 ? 1 : highest);
        }
        double[][] joined = joined(omega);
        for (int i = 0; i < unit.length; i++) {
            for (int j = 0; j < unit.length; j++) {
                joined[i][j] *= step * unit[j] / unit[i];
            }
        }
        double[][] e = MatrixUtils.matrixExponential(new Array2DRowRealMatrix(joined, false)).getData();
        for (int i = 0; i < unit.length; i++) {
            for (int j = 0; j < unit.length; j++) {
                e[i][j] *= unit[i] / unit[j];
            }
        }
        return e;
    }

    private double[][] joined(double omega) {
        int n = motion.order();
        double[][] joined = new double[n + 6][n + 6];
        for (int i = 0; i < n; i++) {
            System.arraycopy(dynamics[i], 0, joined[i], 0, n);
        }
        for (Axis axis : Axis.ALL) {
            int pulse = n + 2 * axis.ordinal();
            for (int i = 0; i < n; i++) {
                joined[i][pulse] = motion.drive(i, axis.ordinal());
            }
            joined[pulse][pulse + 1] = 1;
            joined[pulse + 1][pulse] = -omega * omega;
        }
        return joined;
    }

    /** Follows the points and keeps the largest displacement per axis. */
    private static final class Tracker {

        private static final int HALVINGS = 24;

        /** Of each point, from the centre of gravity. */
        private final double[][] places;
        /** Of each point's three displacements: value, rate, acceleration; now and a step before. */
        private double[] now;
        private double[] before;
        private final double[] most = new double[3];

        Tracker(Assembly assembly, List<Vec> points) {
            places = points.stream().map(assembly::fromCentre).map(p -> new double[] {p.x(), p.y(), p.z()}).toArray(double[][]::new);
            now = new double[9 * places.length];
            before = new double[9 * places.length];
        }

        /** From coordinates, rates and accelerations: u(p) = u + theta x p. */
        void start(double[] motion) {
            for (int at = 0; at < now.length; at += 3) {
                double[] p = places[at / 9];
                int i = at / 3 % 3;
                int j = (i + 1) % 3;
                int k = (i + 2) % 3;
                for (int d = 0; d < 3; d++) {
                    int m = 6 * d;
                    now[at + d] = motion[m + i] + motion[m + 3 + j] * p[k] - motion[m + 3 + k] * p[j];
                }
            }
        }

        void step(double[] motion, double h) {
            double[] last = before;
            before = now;
            now = last;
            start(motion);
            for (int at = 0; at < now.length; at += 3) {
                int i = at / 3 % 3;
                double end = Math.max(Math.abs(before[at]), Math.abs(now[at]));
                most[i] = Math.max(most[i], end);
                boolean turns = before[at + 1] * now[at + 1] < 0;
                if (turns && end + h * Math.max(Math.abs(before[at + 1]), Math.abs(now[at + 1])) > most[i]) {
                    most[i] = Math.max(most[i], Math.abs(turning(at, h)));
                }
            }
        }

        /** The value where the polynomial of fifth degree through values, rates and accelerations turns. */
        private double turning(int at, double h) {
            double v0 = h * before[at + 1];
            double v1 = h * now[at + 1];
            double a0 = h * h * before[at + 2] / 2;
            double a1 = h * h * now[at + 2] / 2;
            double rise = now[at] - before[at];
            double c3 = 10 * rise - 6 * v0 - 4 * v1 - 3 * a0 + a1;
            double c4 = -15 * rise + 8 * v0 + 7 * v1 + 3 * a0 - 2 * a1;
            double c5 = 6 * rise - 3 * v0 - 3 * v1 - a0 + a1;
            double low = 0;
            double high = 1;
            for (int k = 0; k < HALVINGS; k++) {
                double s = (low + high) / 2;
                double rate = v0 + s * (2 * a0 + s * (3 * c3 + s * (4 * c4 + s * 5 * c5)));
                if (rate * v0 > 0) {
                    low = s;
                } else {
                    high = s;
                }
            }
            return before[at] + low * (v0 + low * (a0 + low * (c3 + low * (c4 + low * c5))));
        }
    }
}
