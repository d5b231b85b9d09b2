package quietband.motion.platform;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import quietband.motion.signal.BlockSignal;
import quietband.motion.signal.HermiteHold;
import quietband.motion.signal.LinearStage;
import quietband.motion.signal.StateSpace;

/**
 * The platform while a stop is touched or a spring is slack: piecewise linear, stepped exactly from event to event. A
 * step of the grid in which a threshold is crossed is halved until the crossing lies in 1/4096 of it; there the equations change.
 * For each set of acting contacts and each length of step the matrix exponential is kept.
 */
public final class ContactStage {

    private static final int UNITS = 4096;

    private final PlatformEquations equations;
    private final List<double[]> rows;
    private final double step;
    private final Map<Integer, HermiteHold> holds = new HashMap<>();
    private final Map<Integer, Outputs> outputs = new HashMap<>();
    private final double[][] place;
    private final double[][] rate;
    private final double[] threshold;
    private final double[][] coordinate = new double[6][];
    private final long[] times;
    private final double[] duration;
    private int acting;

    /** Rows for the accelerations with one set of contacts. */
    private record Outputs(StateSpace space, double[][] slope, double[][] slopeOfInput) { }

    ContactStage(PlatformEquations equations, List<double[]> rows, double step) {
        this.equations = equations;
        this.rows = rows;
        this.step = step;
        int count = equations.contacts().size();
        place = new double[count][];
        rate = new double[count][];
        threshold = new double[count];
        for (int i = 0; i < count; i++) {
            Contact c = equations.contacts().get(i);
            place[i] = equations.displacement(c.row());
            rate[i] = equations.rate(c.row());
            threshold[i] = c.threshold();
        }
        for (int i = 0; i < 6; i++) {
            double[] row = new double[6];
            row[i] = 1;
            coordinate[i] = equations.displacement(row);
        }
        times = new long[count];
        duration = new double[count];
    }

    /** The set of contacts beyond their threshold, one bit each. */
    int acting() {
        return acting;
    }

    /** What each contact did, in the order of the equations. */
    public List<ContactRecord> records() {
        List<ContactRecord> list = new ArrayList<>();
        for (int i = 0; i < times.length; i++) {
            Contact c = equations.contacts().get(i);
            list.add(new ContactRecord(c.label(), c.stop(), times[i], duration[i]));
        }
        return list;
    }

    /**
     * Steps through a block.
     *
     * @param x    the state; modified
     * @param out  accelerations, written from point 0 to n
     * @param seen the six coordinates, written from point 0 to n
     */
    void run(double[] x, BlockSignal[] drive, boolean[] used, BlockSignal[] out, double[][] seen, int n) {
        double[] state = x;
        for (int k = 0;; k++) {
            write(state, drive, used, k, out, seen);
            if (k == n) {
                break;
            }
            int at = 0;
            while (at < UNITS) {
                int length = at == 0 ? UNITS : Integer.lowestOneBit(at);
                double[] next = advance(state, drive, used, k, at, length);
                while (length > 1 && crossed(state, next, length)) {
                    length /= 2;
                    next = advance(state, drive, used, k, at, length);
                }
                for (int i = 0; i < times.length; i++) {
                    duration[i] += (acting >> i & 1) * step * length / UNITS;
                }
                state = next;
                at += length;
                change(state);
            }
        }
        System.arraycopy(state, 0, x, 0, x.length);
    }

    private double gap(int i, double[] state) {
        return LinearStage.dot(place[i], state) - threshold[i];
    }

    /** Whether a contact's gap changes sign within the step, at its end or in a turn between. */
    private boolean crossed(double[] from, double[] to, int length) {
        double h = step * length / UNITS;
        for (int i = 0; i < threshold.length; i++) {
            double g0 = gap(i, from);
            double g1 = gap(i, to);
            boolean on = (acting >> i & 1) != 0;
            if (on ? g1 < 0 : g1 > 0) {
                return true;
            }
            double v0 = h * LinearStage.dot(rate[i], from);
            double v1 = h * LinearStage.dot(rate[i], to);
            boolean turns = on ? v0 < 0 && v1 > 0 : v0 > 0 && v1 < 0;
            // the tangents' crossing bounds the turn from outside
            double reach = turns ? Math.max(Math.abs(v0), Math.abs(v1)) / 2 : 0;
            if (on ? Math.min(g0, g1) - reach < 0 && turns : turns && Math.max(g0, g1) + reach > 0) {
                return true;
            }
        }
        return false;
    }

    private void change(double[] state) {
        for (int i = 0; i < threshold.length; i++) {
            boolean on = (acting >> i & 1) != 0;
            double g = gap(i, state);
            if (on ? g < 0 : g > 0) {
                acting ^= 1 << i;
                times[i] += on ? 0 : 1;
            }
        }
    }

    private double[] advance(double[] state, BlockSignal[] drive, boolean[] used, int k, int at, int length) {
        HermiteHold hold = holds.computeIfAbsent(acting * 2 * UNITS + length, key -> {
            double[][][] fg = equations.matrices(acting);
            return HermiteHold.of(fg[0], fg[1], step * length / UNITS);
        });
        double s0 = (double) at / UNITS;
        double s1 = (double) (at + length) / UNITS;
        double part = s1 - s0;
        double[] u = new double[16];
        for (int j = 0; j < 3; j++) {
            if (used[j]) {
                u[4 * j] = drive[j].at(k, s0);
                u[4 * j + 1] = part * drive[j].slopeAt(k, s0);
                u[4 * j + 2] = drive[j].at(k, s1);
                u[4 * j + 3] = part * drive[j].slopeAt(k, s1);
            }
        }
        u[12] = 1;
        u[14] = 1;
        double[] next = new double[state.length];
        for (int i = 0; i < next.length; i++) {
            next[i] = LinearStage.dot(hold.phi()[i], state) + LinearStage.dot(hold.input()[i], u);
        }
        return next;
    }

    private void write(double[] state, BlockSignal[] drive, boolean[] used, int k, BlockSignal[] out, double[][] seen) {
        Outputs o = outputs.computeIfAbsent(acting, this::outputs);
        for (int p = 0; p < out.length; p++) {
            double v = LinearStage.dot(o.space.c()[p], state) + o.space.d()[p][3];
            double s = LinearStage.dot(o.slope[p], state) + o.slopeOfInput[p][3];
            for (int j = 0; j < 3; j++) {
                if (used[j]) {
                    double d = o.space.d()[p][j];
                    v += d * drive[j].value[k];
                    s += d * drive[j].slope[k] + o.slopeOfInput[p][j] * drive[j].value[k];
                }
            }
            out[p].value[k] = v;
            out[p].slope[k] = s;
        }
        for (int i = 0; i < 6; i++) {
            seen[i][k] = LinearStage.dot(coordinate[i], state);
        }
    }

    private Outputs outputs(int set) {
        StateSpace s = equations.accelerations(set, rows);
        return new Outputs(s, s.slopes(step), s.slopesOfInput(step));
    }

    /** Potential energy in the contacts now acting, J: what stops store and slack springs no longer take. */
    double contactEnergy(double[] state) {
        double sum = 0;
        for (int i = 0; i < threshold.length; i++) {
            double g = gap(i, state);
            sum += (acting >> i & 1) * equations.contacts().get(i).stiffness() * g * g / 2;
        }
        return sum;
    }
}
