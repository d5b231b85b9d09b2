package quietband.filter.allowed;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.complex.Complex;
import quietband.cancellation.CancellationPath;
import quietband.demand.Decibels;
import quietband.demand.ResidualDemand;
import quietband.model.Axis;
import quietband.model.Cancellation.PathError;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.response.DesignGrid;
import quietband.response.ResidualResponse;
import quietband.spectrum.AdaptiveCurves;

/**
 * How much error of gain, phase or delay one sensor's path may have until the fullest stack just meets its limit on whichever
 * housing axis comes first, everything else as the model stands. With r_j what is left of y_j without this sensor and t_j its
 * share without error, y_j = r_j - (1 + gain) exp(j (phase - w delay)) t_j: a quadratic in the gain, a cosine in the phase.
 * Values are those to write into the model's {@code error}: of the two ends the one nearer to 0.
 */
public final class AllowedErrors {

    /** What may err. */
    public enum Kind {
        /** Relative. */
        GAIN,
        /** In rad; a lead is positive. */
        PHASE,
        /** In s. */
        DELAY
    }

    /**
     * From where to where an error may go; infinite where nothing limits it, both 0 where the limit is exceeded already.
     *
     * @param low  lower end
     * @param high upper end
     */
    public record Span(double low, double high) {

        /** The end nearer to 0, the upper one when both are as far; infinite where nothing limits. */
        public double nearest() {
            return Math.abs(low) < Math.abs(high) * (1 - 1e-6) ? low : high;
        }
    }

    /** The least that one kind of error may be over the band, and where. */
    public record Least(Kind kind, Axis axis, double value, double frequencyHz) { }

    private static final double TOUCH = 1e-9;
    private static final double FOLLOW_DB = 0.05;

    private final Design design;
    private final Stack stack;
    private final ResidualResponse response;
    private final ResidualDemand demand;
    private final CancellationPath path;
    private final PathError error;
    private final double[] yRe = new double[3];
    private final double[] yIm = new double[3];
    private final double[] sRe = new double[9];
    private final double[] sIm = new double[9];

    /** Of a design with a cancellation. */
    public AllowedErrors(Design design) {
        this.design = design;
        this.stack = Stack.fullest(design);
        this.response = new ResidualResponse(design);
        this.demand = new ResidualDemand(design, Double.POSITIVE_INFINITY);
        this.path = new CancellationPath(design.cancellation().orElseThrow());
        this.error = design.cancellation().orElseThrow().error();
    }

    /** Whether there is a limit to be allowed anything by. */
    public boolean asked() {
        return demand.asked();
    }

    /** The errors a sensor's path has, by kind. */
    public double now(Kind kind, Axis axis) {
        return switch (kind) {
            case GAIN -> error.gain().get(axis.ordinal());
            case PHASE -> error.phase().get(axis.ordinal());
            case DELAY -> error.delay().get(axis.ordinal());
        };
    }

    /** What each kind of error of a sensor axis may be at f in Hz. */
    public Map<Kind, Span> at(Axis axis, double f) {
        Turn turn = turn(axis, f);
        Span none = new Span(0, 0);
        Map<Kind, Span> spans = reach(axis, f, turn);
        if (!holds(turn.gain(), now(Kind.GAIN, axis))) {
            spans.put(Kind.GAIN, none);
        }
        if (!holds(turn.by(), 0)) {
            spans.put(Kind.PHASE, none);
            spans.put(Kind.DELAY, none);
        }
        return spans;
    }

    /**
     * Which errors of a sensor axis keep the limit at f in Hz, whether or not those the model has are among them; the lower end is
     * above the upper one where none does.
     */
    public Map<Kind, Span> reach(Axis axis, double f) {
        return reach(axis, f, turn(axis, f));
    }

    private Map<Kind, Span> reach(Axis axis, double f, Turn turn) {
        double w = 2 * Math.PI * f;
        double phase = now(Kind.PHASE, axis);
        double delay = now(Kind.DELAY, axis);
        Map<Kind, Span> spans = new EnumMap<>(Kind.class);
        spans.put(Kind.GAIN, turn.gain());
        spans.put(Kind.PHASE, new Span(phase + turn.by().low(), phase + turn.by().high()));
        spans.put(Kind.DELAY, new Span(delay - turn.by().high() / w, delay - turn.by().low() / w));
        return spans;
    }

    /** The gain errors that keep the limit, and the angles by which the path may turn beyond what it does. */
    private record Turn(Span gain, Span by) { }

    private Turn turn(Axis axis, double f) {
        State s = state(axis.ordinal(), f);
        double rho = 1 + now(Kind.GAIN, axis);
        double angle = now(Kind.PHASE, axis) - 2 * Math.PI * f * now(Kind.DELAY, axis);
        return new Turn(s.gain(angle), s.turn(rho, angle));
    }

    private static boolean holds(Span span, double value) {
        return value >= span.low() - TOUCH && value <= span.high() + TOUCH;
    }

    /** Largest residual over its limit at f when a sensor's gain and phase are other than they are; infinite for a limit of 0. */
    public double ratio(Axis axis, double f, double gain, double phase) {
        State s = state(axis.ordinal(), f);
        return s.ratio(1 + gain, phase - 2 * Math.PI * f * now(Kind.DELAY, axis));
    }

    private State state(int i, double f) {
        response.at(f);
        response.residual(stack, yRe, yIm);
        response.sensed(stack.sprung(), sRe, sIm);
        Complex wp = path.nominal(i, f).multiply(design.weightsPerG().get(i));
        Complex own = path.phase(i).multiply(path.delay(i, f)).multiply(path.gain(i));
        State s = new State(demand.rows());
        for (int j = 0; j < 3; j++) {
            Complex t = wp.multiply(new Complex(sRe[3 * i + j], sIm[3 * i + j]));
            Complex r = new Complex(yRe[j], yIm[j]).add(own.multiply(t));
            s.add(demand.row(j), r, t, demand.limit(j, f));
        }
        return s;
    }

    /** The least over the band of each kind and axis, refined between the points of the program's own grid. */
    public List<Least> least() {
        double[] grid = DesignGrid.of(design, design.requirement().fromHz(), design.requirement().toHz());
        AdaptiveCurves sweep = AdaptiveCurves.refined(grid, f -> {
            double[] over = new double[9];
            for (Axis axis : Axis.ALL) {
                Map<Kind, Span> spans = at(axis, f);
                for (Kind kind : Kind.values()) {
                    double v = Math.abs(spans.get(kind).nearest());
                    over[3 * axis.ordinal() + kind.ordinal()] = -Decibels.ofRatio(v);
                }
            }
            return over;
        }, FOLLOW_DB);
        List<Least> least = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            for (Kind kind : Kind.values()) {
                double f = sweep.maximum(3 * axis.ordinal() + kind.ordinal()).frequencyHz();
                least.add(new Least(kind, axis, at(axis, f).get(kind).nearest(), f));
            }
        }
        return least;
    }

    /** Sums per housing axis, or over all of them when the vector counts. */
    private static final class State {

        private final double[][] lines;

        State(int rows) {
            lines = new double[rows][5];
        }

        /** Adds to a row |r|^2, |t|^2, Re and Im of conj(r) t; its limit^2 stands last. */
        void add(int row, Complex r, Complex t, double limit) {
            Complex k = r.conjugate().multiply(t);
            double[] l = lines[row];
            l[0] += norm(r);
            l[1] += norm(t);
            l[2] += k.getReal();
            l[3] += k.getImaginary();
            l[4] = limit * limit;
        }

        private static double norm(Complex c) {
            return c.getReal() * c.getReal() + c.getImaginary() * c.getImaginary();
        }

        double ratio(double rho, double turn) {
            double most = 0;
            for (double[] l : lines) {
                double cross = l[2] * StrictMath.cos(turn) - l[3] * StrictMath.sin(turn);
                most = Math.max(most, (l[0] + rho * rho * l[1] - 2 * rho * cross) / l[4]);
            }
            return Math.sqrt(Math.max(0, most));
        }

        /** From where to where the gain error may go when the path turns by an angle. */
        Span gain(double turn) {
            double low = Double.NEGATIVE_INFINITY;
            double high = Double.POSITIVE_INFINITY;
            for (double[] l : lines) {
                double cross = l[2] * StrictMath.cos(turn) - l[3] * StrictMath.sin(turn);
                double room = cross * cross - l[1] * (l[0] - l[4]);
                if (l[1] == 0 ? l[0] > l[4] : room < 0) {
                    return new Span(Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);
                }
                if (l[1] > 0 && Double.isFinite(l[4])) {
                    low = Math.max(low, (cross - Math.sqrt(room)) / l[1] - 1);
                    high = Math.min(high, (cross + Math.sqrt(room)) / l[1] - 1);
                }
            }
            return new Span(low, high);
        }

        /** From where to where the path may turn beyond what it does. */
        Span turn(double rho, double turn) {
            double low = Double.NEGATIVE_INFINITY;
            double high = Double.POSITIVE_INFINITY;
            for (double[] l : lines) {
                double size = Math.hypot(l[2], l[3]);
                double least = (l[0] + rho * rho * l[1] - l[4]) / (2 * rho * size);
                if (least <= -1 || Double.isNaN(least) || Double.isInfinite(l[4])) {
                    continue;
                }
                double reach = least >= 1 ? -1 : StrictMath.acos(least);
                double centre = Math.IEEEremainder(-StrictMath.atan2(l[3], l[2]) - turn, 2 * Math.PI);
                low = Math.max(low, centre - reach);
                high = Math.min(high, centre + reach);
            }
            return new Span(low, high);
        }
    }
}
