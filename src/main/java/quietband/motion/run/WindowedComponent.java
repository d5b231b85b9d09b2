package quietband.motion.run;

import java.util.ArrayList;
import java.util.List;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.motion.correction.CancellationRun;
import quietband.motion.correction.HoldObserver;
import quietband.motion.correction.TuningPortRun;
import quietband.motion.signal.PhaseRotation;

/**
 * The component at the drive's frequency in windows that follow one another. Each window is four stretches of a whole
 * number of periods, tapered as the cubic B-spline over them: zero at every multiple of the drive's frequency, and falling with
 * the fourth power away from it, so that the images of a hold, which are not multiples of it, do not count. The staircase before
 * the tuning port is integrated exactly, step by step of the hold.
 */
final class WindowedComponent {

    /** Real and imaginary parts of a window, one of each for every stack. */
    private record Sums(double[] re, double[] im) { }

    private final List<Stack> stacks;
    private final double w;
    private final double step;
    private final double start;
    private final double length;
    private final boolean held;
    private final PhaseRotation rotor;
    private final List<Sums> seen = new ArrayList<>();
    private final List<Sums> taken = new ArrayList<>();

    /**
     * For one pass.
     *
     * @param w      angular frequency of the drive, rad/s
     * @param step   of the grid, s
     * @param start  of the first window, s
     * @param length of one of the four stretches, s
     */
    WindowedComponent(Design design, double w, double step, double start, double length) {
        this.stacks = Stack.of(design);
        this.w = w;
        this.step = step;
        this.start = start;
        this.length = length;
        this.rotor = new PhaseRotation(w * step);
        this.held = design.cancellation().map(c -> c.path().sampled()).orElse(false);
    }

    /** Cubic B-spline on 0..4, of unit integral. */
    static double spline(double x) {
        double a = Math.abs(x - 2);
        if (a >= 2) {
            return 0;
        }
        return a >= 1 ? (2 - a) * (2 - a) * (2 - a) / 6 : 2.0 / 3 - a * a + a * a * a / 2;
    }

    private static Sums at(List<Sums> list, int window, int count) {
        while (list.size() <= window) {
            list.add(new Sums(new double[count], new double[count]));
        }
        return list.get(window);
    }

    /** Takes the grid's points. */
    void frame(GridBlock f) {
        for (int k = 0; k < f.n(); k++) {
            double t = (f.first() + k) * step;
            double x = (t - start) / length;
            if (x < 0) {
                continue;
            }
            int window = (int) (x / 4);
            double weight = spline(x - 4 * window);
            Sums s = at(seen, window, stacks.size());
            rotor.to(f.first() + k);
            double c = weight * rotor.cos();
            double q = -weight * rotor.sin();
            for (int i = 0; i < stacks.size(); i++) {
                s.re[i] += c * f.y()[i][k];
                s.im[i] += q * f.y()[i][k];
            }
        }
    }

    /** The observer that takes the staircase of a corrected stack. */
    HoldObserver observer(Stack stack, CancellationRun correction) {
        int index = stacks.indexOf(stack);
        double period = correction.holdPeriod();
        TuningPortRun port = correction.port();
        double[][] whole = new double[3][];
        for (int m = 0; m < 3; m++) {
            whole[m] = decaying(m == 0 ? 0 : m * port.pole(), period);
        }
        PhaseRotation turn = new PhaseRotation(w * period);
        return (k, level, state) -> {
            double t = k * period;
            double x = (t + period / 2 - start) / length;
            if (x < 0) {
                return;
            }
            int window = (int) (x / 4);
            double weight = spline(x - 4 * window);
            double e = state - level;
            double a0 = port.bent(level);
            double a1 = e * (1 + 2 * port.bend() * level);
            double a2 = port.bend() * e * e;
            double re = a0 * whole[0][0] + a1 * whole[1][0] + a2 * whole[2][0];
            double im = a0 * whole[0][1] + a1 * whole[1][1] + a2 * whole[2][1];
            turn.to(k);
            double c = weight * turn.cos();
            double q = -weight * turn.sin();
            Sums s = at(taken, window, stacks.size());
            s.re[index] += re * c - im * q;
            s.im[index] += re * q + im * c;
        };
    }

    /** Integral of exp(-(a + j w) t) over a time, {re, im}; zero for an infinite a. */
    private double[] decaying(double a, double time) {
        if (Double.isInfinite(a)) {
            return new double[2];
        }
        double d = Math.exp(-a * time);
        double re = 1 - d * Math.cos(w * time);
        double im = d * Math.sin(w * time);
        double size = a * a + w * w;
        return new double[] {(re * a + im * w) / size, (im * a - re * w) / size};
    }

    /**
     * Complex amplitudes of one window: row per stack, {re, im}, for a time dependence exp(+j w t).
     */
    double[][] amplitudes(int window) {
        Sums s = seen.get(window);
        double perPoint = 2 * step / length;
        double[][] y = new double[stacks.size()][2];
        for (int i = 0; i < stacks.size(); i++) {
            Stack stack = stacks.get(i);
            int plain = held && stack.corrected() ? stacks.indexOf(stack.sprung() ? Stack.ISOLATED : Stack.BARE) : i;
            y[i][0] = perPoint * s.re[plain];
            y[i][1] = perPoint * s.im[plain];
            if (plain != i && window < taken.size()) {
                y[i][0] -= 2 / length * taken.get(window).re[i];
                y[i][1] -= 2 / length * taken.get(window).im[i];
            }
        }
        return y;
    }
}
