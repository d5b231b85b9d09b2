package quietband.tuning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.complex.Complex;
import quietband.cancellation.CorrectionPath;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.response.ResidualLimit;
import quietband.response.ResidualResponse;

/**
 * Between which values each of the path's errors may lie so that the fullest stack stays within its residual limit over the band:
 * one error of one sensor axis at a time, everything else as written, the limit taken as it is now. With T_j = weight_i P_i
 * sensed_i(e_j) of sensor i, its error in, and y_j the residual,
 * <pre>
 *   gain:         y_j - T_j (r - 1),  r = (1 + new)/(1 + now):      a quadratic in r
 *   phase, delay: (y_j + T_j) - T_j exp(j p),  p = new phase - now or -w (new delay - now):  a cosine in p
 * </pre>
 * each solved in closed form at every frequency; the stretches found are intersected.
 *
 * @param gain  by x, y and z, ratios
 * @param phase by x, y and z, rad
 * @param delay by x, y and z, s
 */
public record ErrorRoom(List<Span> gain, List<Span> phase, List<Span> delay) {

    public ErrorRoom {
        gain = List.copyOf(gain);
        phase = List.copyOf(phase);
        delay = List.copyOf(delay);
    }

    /**
     * What one error may be.
     *
     * @param now  as written
     * @param low  least value, minus infinity where nothing limits it
     * @param high largest value; below {@code low} when no value does
     * @param atHz where the end that is nearer binds
     */
    public record Span(double now, double low, double high, double atHz) {

        /** Whether some value keeps the limit. */
        public boolean open() {
            return low <= high;
        }

        /** Whether the value as written does. */
        public boolean kept() {
            return low <= now && now <= high;
        }
    }

    /**
     * Works them out.
     *
     * @param frequencies at which the limit is to be kept, Hz, above 0
     * @return empty without a correction or a residual limit
     */
    public static Optional<ErrorRoom> of(Design design, double[] frequencies) {
        ResidualLimit limit = new ResidualLimit(design);
        if (design.cancellation().isEmpty() || !limit.asked()) {
            return Optional.empty();
        }
        Cancellation.PathError error = design.cancellation().get().error();
        Stretch[] gain = stretches();
        Stretch[] phase = stretches();
        Stretch[] delay = stretches();
        Terms terms = new Terms(design);
        for (double f : frequencies) {
            terms.at(f);
            for (int i = 0; i < 3; i++) {
                for (int j = 0; j < (design.requirement().byVector() ? 1 : 3); j++) {
                    boolean vector = design.requirement().byVector();
                    double allowed = vector ? least(limit, f) : limit.at(Axis.ALL.get(j), f);
                    if (Double.isFinite(allowed)) {
                        terms.add(i, vector ? 0 : j, vector ? 3 : j + 1);
                        terms.gain(gain[i], allowed, f, error.gain().get(i));
                        terms.phase(phase[i], delay[i], allowed, f);
                    }
                }
            }
        }
        return Optional.of(new ErrorRoom(spans(gain, error.gain(), 0), spans(phase, error.phase(), 1), spans(delay, error.delay(), 1)));
    }

    private static double least(ResidualLimit limit, double f) {
        return Axis.ALL.stream().mapToDouble(a -> limit.at(a, f)).min().orElseThrow();
    }

    private static Stretch[] stretches() {
        return new Stretch[] {new Stretch(), new Stretch(), new Stretch()};
    }

    /** @param relative 1 where a stretch counts from the value as written */
    private static List<Span> spans(Stretch[] found, Vec now, int relative) {
        List<Span> spans = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            double v = now.get(i);
            double low = found[i].low + relative * v;
            double high = found[i].high + relative * v;
            spans.add(new Span(v, low, high, v - low < high - v ? found[i].lowHz : found[i].highHz));
        }
        return spans;
    }

    /** Values that are still allowed. */
    private static final class Stretch {

        private double low = Double.NEGATIVE_INFINITY;
        private double high = Double.POSITIVE_INFINITY;
        private double lowHz = Double.NaN;
        private double highHz = Double.NaN;

        void within(double from, double to, double f) {
            if (from > low) {
                low = from;
                lowHz = f;
            }
            if (to < high) {
                high = to;
                highHz = f;
            }
        }

        void never(double f) {
            within(Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, f);
        }
    }

    /** y and T at one frequency, and their sums over the drives that count together. */
    private static final class Terms {

        private final ResidualResponse response;
        private final CorrectionPath path;
        private final Vec weights;
        private final Stack stack;
        private final double[] yRe = new double[3];
        private final double[] yIm = new double[3];
        private final double[] sRe = new double[9];
        private final double[] sIm = new double[9];
        private final Complex[] corrected = new Complex[3];
        /** Sum of |T|^2, of |y|^2 and of y conj(T). */
        private double squareT;
        private double squareY;
        private Complex cross = Complex.ZERO;

        Terms(Design design) {
            response = new ResidualResponse(design);
            path = new CorrectionPath(design.cancellation().orElseThrow());
            weights = design.weightsPerG();
            stack = Stack.fullest(design);
        }

        void at(double f) {
            response.at(f);
            response.residual(stack, yRe, yIm);
            response.sensed(stack.sprung(), sRe, sIm);
            for (int i = 0; i < 3; i++) {
                corrected[i] = path.at(i, f).multiply(weights.get(i));
            }
        }

        void add(int i, int from, int to) {
            squareT = 0;
            squareY = 0;
            cross = Complex.ZERO;
            for (int j = from; j < to; j++) {
                Complex t = corrected[i].multiply(new Complex(sRe[3 * i + j], sIm[3 * i + j]));
                Complex y = new Complex(yRe[j], yIm[j]);
                squareT += t.getReal() * t.getReal() + t.getImaginary() * t.getImaginary();
                squareY += y.getReal() * y.getReal() + y.getImaginary() * y.getImaginary();
                cross = cross.add(y.multiply(t.conjugate()));
            }
        }

        /** The gain errors with which |y - T (r - 1)| stays within the limit. */
        void gain(Stretch into, double allowed, double f, double now) {
            double middle = cross.getReal() / squareT;
            double square = middle * middle - (squareY - allowed * allowed) / squareT;
            if (!(squareT > 0)) {
                nothing(into, allowed, f);
            } else if (square < 0) {
                into.never(f);
            } else {
                double half = Math.sqrt(square);
                into.within((1 + now) * (1 + middle - half) - 1, (1 + now) * (1 + middle + half) - 1, f);
            }
        }

        /** Phases and delays to add with which |(y + T) - T exp(j p)| stays within the limit. */
        void phase(Stretch phase, Stretch delay, double allowed, double f) {
            Complex c = cross.add(squareT);
            double cosine = (squareY + 2 * cross.getReal() + 2 * squareT - allowed * allowed) / (2 * c.norm());
            if (!(squareT > 0)) {
                nothing(phase, allowed, f);
                nothing(delay, allowed, f);
            } else if (cosine > 1) {
                phase.never(f);
                delay.never(f);
            } else if (cosine > -1) {
                double half = StrictMath.acos(cosine);
                double w = 2 * Math.PI * f;
                phase.within(c.getArgument() - half, c.getArgument() + half, f);
                delay.within((-c.getArgument() - half) / w, (-c.getArgument() + half) / w, f);
            }
        }

        /** The error changes nothing here. */
        private void nothing(Stretch into, double allowed, double f) {
            if (squareY > allowed * allowed) {
                into.never(f);
            }
        }
    }
}
