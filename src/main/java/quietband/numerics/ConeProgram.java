package quietband.numerics;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.stat.StatUtils;

/**
 * Least of {@code 1/2 x'Px + q'x} under second-order cones {@code |A x + b| <= c'x + d}: the primal-dual interior-point
 * method with Nesterov-Todd scaling and Mehrotra's correction (L. Vandenberghe, The CVXOPT linear and quadratic cone
 * program solvers, 2010; from memory). P is diagonal. Every cone names the few unknowns it depends on.
 */
public final class ConeProgram {

    private static final int MOST_STEPS = 80;
    private static final double STEP = 0.99;

    private final int n;
    private final double[] p;
    private final double[] q;
    private final List<SecondOrderCone> cones = new ArrayList<>();
    private double accuracy = 1e-7;

    /**
     * A program without cones yet.
     *
     * @param p diagonal of P, at least 0 (length n); kept
     * @param q linear cost (length n); kept
     */
    public ConeProgram(double[] p, double[] q) {
        this.n = p.length;
        this.p = p;
        this.q = q;
    }

    /** Relative gap at which the iteration ends; 1e-7 at first. */
    public ConeProgram accuracy(double wanted) {
        accuracy = wanted;
        return this;
    }

    /** Adds a cone. */
    public void add(SecondOrderCone cone) {
        cones.add(cone);
    }

    /**
     * The minimiser (length n).
     *
     * @throws ArithmeticException when there is none that the method finds
     */
    public double[] solve() {
        List<ConeState> states = cones.stream().map(ConeState::new).toList();
        double[] x = start(states);
        double[] best = x.clone();
        double least = Double.POSITIVE_INFINITY;
        int worse = 0;
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] rx = new double[n];
            double cost = 0;
            for (int i = 0; i < n; i++) {
                rx[i] = p[i] * x[i] + q[i];
                cost += x[i] * (p[i] * x[i] / 2 + q[i]);
            }
            double gap = 0;
            double off = 0;
            double own = 1;
            for (double v : rx) {
                own = Math.max(own, Math.abs(v));
            }
            for (ConeState s : states) {
                s.addMultiplier(rx);
                s.residual(x);
                gap += s.gap();
                off = Math.max(off, s.infeasibility());
            }
            double dual = Math.sqrt(StatUtils.sumSq(rx)) / own;
            // what is asked is feasible and cheap; the multipliers need not be as good
            double error = Math.max(Math.max(dual / 100, 10 * off), gap / Math.max(1e-3, Math.abs(cost)));
            if (error < least) {
                least = error;
                best = x.clone();
                worse = 0;
            } else if (++worse > 6) {
                break;
            }
            if (error < accuracy) {
                return x;
            }
            if (!advance(states, x, rx, gap)) {
                break;
            }
        }
        if (!(least < 1e-2)) {
            throw new ArithmeticException("the search for a filter did not settle (relative error " + least
                + "); ask for fewer taps, a lower --max-gain or another goal");
        }
        return best;
    }

    private double[] start(List<ConeState> states) {
        double[] rhs = new double[n];
        for (int i = 0; i < n; i++) {
            rhs[i] = -q[i];
        }
        double[] h = hessian(states);
        for (ConeState s : states) {
            s.cone().addTransposed(s.cone().bound(), rhs);
        }
        Cholesky.factor(h, n);
        Cholesky.solve(h, n, rhs);
        states.forEach(s -> s.start(rhs));
        ConeState.centre(states);
        return rhs;
    }

    /** P + G' W^-2 G, lower triangle. */
    private double[] hessian(List<ConeState> states) {
        double[] h = new double[n * n];
        for (int i = 0; i < n; i++) {
            h[i * n + i] = p[i];
        }
        states.forEach(s -> s.addTo(h, n));
        return h;
    }

    private boolean advance(List<ConeState> states, double[] x, double[] rx, double gap) {
        double degree = states.size();
        states.forEach(ConeState::scale);
        double[] h = hessian(states);
        Cholesky.factor(h, n);
        // predictor
        states.forEach(ConeState::affine);
        direction(states, h, rx);
        double reach = states.stream().mapToDouble(s -> s.longest()).min().orElse(1);
        double sigma = Math.pow(1 - Math.min(1, reach), 3);
        double mu = gap / degree;
        states.forEach(s -> s.corrected(sigma * mu));
        double[] dx = direction(states, h, rx);
        reach = Math.min(1, STEP * states.stream().mapToDouble(s -> s.longest()).min().orElse(1));
        if (!(reach > 1e-12) || !Double.isFinite(dx[0])) {
            return false;
        }
        for (int i = 0; i < n; i++) {
            x[i] += reach * dx[i];
        }
        for (ConeState s : states) {
            s.step(reach);
        }
        return true;
    }

    private double[] direction(List<ConeState> states, double[] h, double[] rx) {
        double[] dx = new double[n];
        for (int i = 0; i < n; i++) {
            dx[i] = -rx[i];
        }
        states.forEach(s -> s.addRight(dx));
        Cholesky.solve(h, n, dx);
        states.forEach(s -> s.direction(dx));
        return dx;
    }
}
