package quietband.tuning.springs;

import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongConsumer;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Vec;
import quietband.numerics.BoundedSearch;
import quietband.platform.Assembly;
import quietband.platform.AxisFrequencies;
import quietband.response.verdict.DesignMargins;
import quietband.tuning.parts.PlatformNumbers;

/**
 * Twelve free values for a platform that meets every requirement together with the cancellation as it stands: natural frequency and
 * damping ratio of
 * each axis, mass and place of ballast, how far the springs stand from the middle along x and y. The springs are moved so that elastic
 * centre and centre of gravity meet.
 */
final class HoldSearch {

    /** How many values are free. */
    static final int FREE = 12;

    private static final double LOWEST_HZ = 8;
    private static final double HIGHEST_HZ = 400;
    private static final double MOST_DAMPING = 0.6;
    private static final double BALLAST_STEP = 1e-4;
    private static final double PLACE_STEP = 1e-4;
    private static final double PER_SHARE_DB = 0.2;
    private static final double PLAIN_DB = 0.03;

    private final Design base;
    private final Platform platform;
    private final boolean centre;
    private final double[] least = new double[3];
    private final double room;
    private final Vec half;

    HoldSearch(Design base, boolean centre) {
        this.base = base;
        this.platform = base.platform().orElseThrow();
        this.centre = centre;
        for (Axis a : Axis.ALL) {
            // viscous damping adds to what the material loses
            double loss = platform.springs().stream().mapToDouble(s -> s.lossFactor().get(a)).max().orElse(0);
            least[a.ordinal()] = Math.min(0.5, loss / 2 + platform.modalDamping() + 0.01);
        }
        this.room = Math.max(0, Double.isFinite(platform.massLimit()) ? platform.massLimit() - platform.mass() : 0.3 * platform.mass());
        this.half = platform.size().orElseGet(() -> span(platform)).times(0.5);
    }

    private static Vec span(Platform p) {
        return Vec.perAxis(a -> p.springs().stream().mapToDouble(s -> 2 * Math.abs(s.at().get(a))).max().orElse(0));
    }

    /** What twelve shares between 0 and 1 mean. */
    record Values(Vec corner, Vec damping, double ballast, Vec at, Vec spread) { }

    Values values(double[] x) {
        double[] corner = new double[3];
        double[] damping = new double[3];
        double[] at = new double[3];
        for (int i = 0; i < 3; i++) {
            corner[i] = LOWEST_HZ * StrictMath.pow(HIGHEST_HZ / LOWEST_HZ, x[i]);
            damping[i] = least[i] * StrictMath.pow(MOST_DAMPING / least[i], x[3 + i]);
            at[i] = Math.rint((platform.centreOfGravity().get(i) + (2 * x[7 + i] - 1) * half.get(i)) / PLACE_STEP) * PLACE_STEP;
        }
        double ballast = Math.floor(room * x[6] / BALLAST_STEP) * BALLAST_STEP;
        return new Values(Vec.of(corner), Vec.of(damping), ballast, Vec.of(at), new Vec(spread(x[10]), spread(x[11]), 1));
    }

    private static double spread(double share) {
        return Math.rint((0.6 + 0.8 * share) * 100) / 100;
    }

    /** Where the search starts: the design as it is. */
    double[] start() {
        Vec now = AxisFrequencies.hz(new Assembly(platform));
        double[] x = new double[FREE];
        for (int i = 0; i < 3; i++) {
            x[i] = Math.max(0, Math.min(1, StrictMath.log(now.get(i) / LOWEST_HZ) / StrictMath.log(HIGHEST_HZ / LOWEST_HZ)));
            x[3 + i] = 0.3;
            x[7 + i] = 0.5;
        }
        x[10] = 0.5;
        x[11] = 0.5;
        return x;
    }

    /** The design with places and ballast, its rates and damping as they were. */
    Design placed(Values v) {
        PlatformNumbers numbers = new PlatformNumbers(base);
        numbers.spread(platform.centreOfGravity(), v.spread());
        numbers.ballast(v.ballast(), v.at());
        if (centre) {
            ElasticCentring.meet(numbers);
        }
        return numbers.design();
    }

    /** The whole design, natural frequencies to first order where something couples. */
    Design design(double[] x) {
        Values v = values(x);
        Design placed = placed(v);
        Vec now = AxisFrequencies.hz(new Assembly(placed.platform().orElseThrow()));
        PlatformNumbers numbers = new PlatformNumbers(placed);
        double all = 1;
        for (Axis a : Axis.ALL) {
            double ratio = v.corner().get(a) / now.get(a);
            numbers.scale("stiffness", "", a.ordinal(), ratio * ratio);
            numbers.scale("relaxation.corner", "", a.ordinal(), ratio);
            all *= ratio * ratio;
        }
        numbers.scale("mass", "", -1, StrictMath.cbrt(all));
        SpringDamping.ratio(numbers, v.corner(), v.damping());
        return numbers.design();
    }

    /** Worst margin, dB, less a little for what is odd and brings nothing. */
    BoundedSearch.Score score(double[] x) {
        DesignMargins margins = DesignMargins.of(design(x));
        return new BoundedSearch.Score(margins.goal() - odd(values(x)), margins.worstOver());
    }

    /** Of designs that are as good the plain one is wanted: no ballast, natural frequencies alike, springs where they were; dB. */
    private double odd(Values v) {
        double apart = Math.abs(StrictMath.log(v.corner().x() / v.corner().y())) + Math.abs(StrictMath.log(v.corner().y() / v.corner().z()))
            + Math.abs(StrictMath.log(v.damping().x() / v.damping().y())) + Math.abs(StrictMath.log(v.damping().y() / v.damping().z()));
        double moved = Math.abs(v.spread().x() - 1) + Math.abs(v.spread().y() - 1);
        return PER_SHARE_DB * v.ballast() / platform.mass() + PLAIN_DB * (apart + moved);
    }

    /**
     * The best that was found, as a target for rates and parts.
     *
     * @param told how many designs have been judged; called from several threads
     */
    SpringTarget run(long seed, int threads, LongConsumer told) {
        BoundedSearch.Result result = BoundedSearch.run(start(), seed, threads, BoundedSearch.telling(this::score, new AtomicLong(), told));
        double[] x = result.best().x();
        Values v = values(x);
        DesignMargins margins = DesignMargins.of(design(x));
        String held = String.join(", ", margins.touched().keySet());
        String words = String.format(Locale.ROOT, "Search over %d free values, %d designs judged, seed %d: natural frequencies %.1f, %.1f "
            + "and %.1f Hz, damping "
            + "ratios %.3f, %.3f and %.3f, ballast %.1f g, springs %.2f and %.2f times as far out along x and y; worst margin "
            + "%.2f dB%s.", FREE,
            result.looks(), seed, v.corner().x(), v.corner().y(), v.corner().z(), v.damping().x(), v.damping().y(), v.damping().z(),
            1e3 * v.ballast(), v.spread().x(), v.spread().y(), margins.goal(),
            held.isEmpty() ? "" : ", held by the limit of " + held);
        return new SpringTarget(placed(v), v.corner(), Optional.of(v.damping()), v.ballast(), v.at(), words);
    }
}
