package quietband.spectrum;

import java.util.function.DoubleUnaryOperator;

/** Maximum of a function of log frequency between two ends; needs no derivative and stands kinks. */
final class GoldenSection {

    private static final double RATIO = (Math.sqrt(5) - 1) / 2;
    private static final int STEPS = 48;

    private GoldenSection() { }

    /** Where and how much, on the natural-log axis it was called with. */
    record Found(double x, double value) {

        /** The better of this and a known point, as a frequency. */
        Sweep.Extremum orBetter(double frequencyHz, double other) {
            return other >= value ? new Sweep.Extremum(frequencyHz, other) : new Sweep.Extremum(StrictMath.exp(x), value);
        }
    }

    /** The best point met; 48 steps narrow the bracket to 1e-10 of its width. */
    static Found maximum(DoubleUnaryOperator f, double from, double to) {
        double a = from;
        double b = to;
        double c = b - RATIO * (b - a);
        double d = a + RATIO * (b - a);
        double fc = f.applyAsDouble(c);
        double fd = f.applyAsDouble(d);
        for (int i = 0; i < STEPS && b - a > 1e-13; i++) {
            if (fc > fd) {
                b = d;
                d = c;
                fd = fc;
                c = b - RATIO * (b - a);
                fc = f.applyAsDouble(c);
            } else {
                a = c;
                c = d;
                fc = fd;
                d = a + RATIO * (b - a);
                fd = f.applyAsDouble(d);
            }
        }
        return fc > fd ? new Found(c, fc) : new Found(d, fd);
    }
}
