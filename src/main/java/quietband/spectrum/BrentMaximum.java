package quietband.spectrum;

import java.util.function.DoubleUnaryOperator;

/**
 * Maximum of a function of log frequency between two ends, without derivatives: parabolas through the best points, golden
 * section where they do not help (R. P. Brent, Algorithms for Minimization without Derivatives, 1973, chapter 5; from
 * memory). Stands kinks.
 */
final class BrentMaximum {

    private static final double GOLDEN = (3 - Math.sqrt(5)) / 2;
    private static final double NEAR = 1e-9;
    private static final int STEPS = 60;

    private double a;
    private double b;
    private double x;
    private double w;
    private double v;
    private double fx;
    private double fw;
    private double fv;

    private BrentMaximum() { }

    /** Where and how much, on the natural-log axis it was called with. */
    public record Found(double x, double value) {

        /** The better of this and a known point, as a frequency. */
        AdaptiveCurves.Extremum orBetter(double frequencyHz, double other) {
            return other >= value ? new AdaptiveCurves.Extremum(frequencyHz, other) : new AdaptiveCurves.Extremum(StrictMath.exp(x), value);
        }
    }

    /** The best point met, to about 1e-9 in the logarithm of the frequency or a millionth of the bracket. */
    static Found between(DoubleUnaryOperator f, double from, double to) {
        return new BrentMaximum().run(f, from, to);
    }

    private Found run(DoubleUnaryOperator f, double from, double to) {
        a = from;
        b = to;
        x = w = v = a + GOLDEN * (b - a);
        fx = fw = fv = -f.applyAsDouble(x);
        double near = Math.min(NEAR, 1e-6 * (to - from));
        double step = 0;
        double before = 0;
        for (int i = 0; i < STEPS; i++) {
            double middle = (a + b) / 2;
            if (Math.abs(x - middle) <= 2 * near - (b - a) / 2) {
                break;
            }
            double parabola = Math.abs(before) > near ? parabolic(before) : Double.NaN;
            if (Double.isNaN(parabola)) {
                before = x >= middle ? a - x : b - x;
                step = GOLDEN * before;
            } else {
                before = step;
                step = parabola;
                if (x + step - a < 2 * near || b - x - step < 2 * near) {
                    step = x < middle ? near : -near;
                }
            }
            double u = Math.abs(step) >= near ? x + step : x + (step > 0 ? near : -near);
            take(u, -f.applyAsDouble(u));
        }
        return new Found(x, -fx);
    }

    /** Step to the vertex of the parabola through the three best points; NaN when it is of no use. */
    private double parabolic(double before) {
        double r = (x - w) * (fx - fv);
        double q = (x - v) * (fx - fw);
        double p = (x - v) * q - (x - w) * r;
        q = 2 * (q - r);
        if (q > 0) {
            p = -p;
        }
        q = Math.abs(q);
        boolean good = Math.abs(p) < Math.abs(q * before / 2) && p > q * (a - x) && p < q * (b - x);
        return good ? p / q : Double.NaN;
    }

    private void take(double u, double fu) {
        if (fu <= fx) {
            if (u >= x) {
                a = x;
            } else {
                b = x;
            }
            v = w;
            fv = fw;
            w = x;
            fw = fx;
            x = u;
            fx = fu;
            return;
        }
        if (u < x) {
            a = u;
        } else {
            b = u;
        }
        if (fu <= fw || w == x) {
            v = w;
            fv = fw;
            w = u;
            fw = fu;
        } else if (fu <= fv || v == x || v == w) {
            v = u;
            fv = fu;
        }
    }
}
