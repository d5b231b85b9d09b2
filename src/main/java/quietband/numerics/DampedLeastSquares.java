package quietband.numerics;

import java.util.function.Consumer;

/**
 * Levenberg's and Marquardt's method on a sum of squares, for a few unknowns of about one size: each step solves
 * (J'J + damping diag(J'J)) s = -J'r, no unknown moving by more than a longest change, and is taken when it makes the sum smaller.
 *
 * @param steps    at most so many
 * @param attempts tries of one step, each with six times the damping
 * @param damping  to begin with, divided by five after every step
 * @param longest  change of an unknown in one step
 * @param ridge    added to the diagonal, as a share of its largest
 * @param enough   share of the sum; a step that wins less is the last
 */
public record DampedLeastSquares(int steps, int attempts, double damping, double longest, double ridge, double enough) {

    /** What is squared. */
    public interface Rows {

        /** The rows at a point, a fresh array. */
        double[] at(double[] x);

        /** Derivatives of the rows by each unknown at a point where they are known; a column that stays is all 0. */
        double[][] slopes(double[] x, double[] rows);
    }

    /** Where it ended, and the sum of squares there. */
    public record End(double[] x, double cost) { }

    /** Steps downhill from a start (not modified); every point is brought into what is allowed. */
    public End run(Rows rows, Consumer<double[]> allowed, double[] start) {
        double[] x = start.clone();
        double[] rest = rows.at(x);
        double cost = dot(rest, rest);
        double now = damping;
        for (int step = 0; step < steps; step++) {
            double[][] slopes = rows.slopes(x, rest);
            double before = cost;
            boolean stepped = false;
            for (int attempt = 0; attempt < attempts && !stepped; attempt++) {
                double[] next = step(x, rest, slopes, now);
                allowed.accept(next);
                double[] left = rows.at(next);
                double sum = dot(left, left);
                stepped = sum < cost;
                if (stepped) {
                    x = next;
                    rest = left;
                    cost = sum;
                }
                now = stepped ? now / 5 : now * 6;
            }
            if (!stepped || before - cost < enough * before) {
                break;
            }
        }
        return new End(x, cost);
    }

    private double[] step(double[] x, double[] rest, double[][] j, double damped) {
        int n = x.length;
        double[] h = new double[n * n];
        double[] g = new double[n];
        double most = 0;
        for (int a = 0; a < n; a++) {
            for (int b = 0; b <= a; b++) {
                h[a * n + b] = dot(j[a], j[b]);
            }
            g[a] = -dot(j[a], rest);
            most = Math.max(most, h[a * n + a]);
        }
        for (int a = 0; a < n; a++) {
            h[a * n + a] += damped * h[a * n + a] + ridge * most + Double.MIN_NORMAL;
        }
        Cholesky.factor(h, n);
        Cholesky.solve(h, n, g);
        double[] next = x.clone();
        for (int a = 0; a < n; a++) {
            next[a] += Math.max(-longest, Math.min(longest, g[a]));
        }
        return next;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
