package quietband.tolerance.influence;

import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.hipparchus.analysis.solvers.AllowedSolution;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * The point nearest to the origin of a space of independent standard normals at which a function is no longer positive: the
 * method of Hasofer, Lind, Rackwitz and Fiessler (Computers &amp; Structures 9 (1978) 489, from memory), each step followed along its
 * own ray to the surface, so that kinks of the function cannot send it astray.
 */
final class NearestPoint {

    private static final int ITERATIONS = 12;
    private static final double STEP = 1e-3;
    private static final double FARTHEST = 8;
    /** How well a crossing is found, in standard deviations. */
    private static final double NEAR = 1e-11;
    private static final int ORDER = 5;
    private static final int MOST_EVALUATIONS = 300;
    /** Evaluations that a ray may take: its steps and a crossing's search. */
    private static final int RAY = 80;

    private final ToDoubleFunction<double[]> function;
    private final boolean[] free;
    private final int step;
    private long left;
    private boolean bounded;

    /**
     * For one function and one thread.
     *
     * @param free which coordinates may move; the others stay as they start
     * @param most evaluations of the function, of all searches together
     */
    NearestPoint(ToDoubleFunction<double[]> function, boolean[] free, long most) {
        this.function = z -> {
            left--;
            return function.applyAsDouble(z);
        };
        this.free = free;
        left = most;
        step = 2 * (int) IntStream.range(0, free.length).filter(i -> free[i]).count();
    }

    /** Whether a search ended because the evaluations were used up: a nearer point may exist. */
    boolean bounded() {
        return bounded;
    }

    private boolean enough(int evaluations) {
        bounded |= left < evaluations;
        return left >= evaluations;
    }

    /**
     * Searches.
     *
     * @param start  a point whose free coordinates say where to look first; all zero to begin with the steepest way down
     * @return the point, just beyond the surface, or null when none is found within eight standard deviations
     */
    double[] from(double[] start) {
        double[] origin = onlyFixed(start);
        if (function.applyAsDouble(origin) <= 0) {
            return origin;
        }
        if (length(start) == 0 && !enough(step)) {
            return null;
        }
        double[] direction = length(start) > 0 ? start.clone() : downhill(origin);
        double[] best = null;
        for (int i = 0; i < ITERATIONS && enough(RAY); i++) {
            double[] surface = alongRay(origin, direction);
            if (surface == null) {
                return best;
            }
            double before = best == null ? Double.POSITIVE_INFINITY : length(best);
            if (length(surface) < before) {
                best = surface;
            }
            if (length(surface) > before * (1 - 1e-4)) {
                return best;
            }
            if (!enough(step)) {
                return best;
            }
            direction = downhill(surface);
        }
        return best;
    }

    private double[] onlyFixed(double[] z) {
        double[] origin = z.clone();
        for (int i = 0; i < z.length; i++) {
            origin[i] = free[i] ? 0 : z[i];
        }
        return origin;
    }

    private double length(double[] z) {
        double sum = 0;
        for (int i = 0; i < z.length; i++) {
            sum += free[i] ? z[i] * z[i] : 0;
        }
        return Math.sqrt(sum);
    }

    /** Minus the gradient at a point, by central differences. */
    private double[] downhill(double[] at) {
        double[] down = new double[at.length];
        for (int i = 0; i < at.length; i++) {
            if (free[i]) {
                double[] z = at.clone();
                z[i] = at[i] + STEP;
                double above = function.applyAsDouble(z);
                z[i] = at[i] - STEP;
                down[i] = function.applyAsDouble(z) - above;
            }
        }
        return down;
    }

    /** The first crossing along a ray from the origin, by steps and a bracketing search, on its far side. */
    private double[] alongRay(double[] origin, double[] direction) {
        double scale = length(direction);
        if (!(scale > 0)) {
            return null;
        }
        double inside = 0;
        double outside = Double.NaN;
        for (double t = 0.25; t <= FARTHEST; t += 0.25) {
            if (function.applyAsDouble(point(origin, direction, t / scale)) <= 0) {
                outside = t;
                break;
            }
            inside = t;
        }
        if (Double.isNaN(outside)) {
            return null;
        }
        double crossing = new BracketingNthOrderBrentSolver(0, NEAR, 0, ORDER).solve(MOST_EVALUATIONS,
            t -> function.applyAsDouble(point(origin, direction, t / scale)), inside, outside, AllowedSolution.BELOW_SIDE);
        return point(origin, direction, crossing / scale);
    }

    private double[] point(double[] origin, double[] direction, double t) {
        double[] z = origin.clone();
        for (int i = 0; i < z.length; i++) {
            z[i] += free[i] ? t * direction[i] : 0;
        }
        return z;
    }
}
