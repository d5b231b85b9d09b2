package quietband.tuning.trade;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.DoubleConsumer;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import quietband.demand.RequirementResult;
import quietband.model.Design;
import quietband.platform.SingularPlatformException;
import quietband.response.travel.Travel;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;
import quietband.response.verdict.StackVerdict;
import quietband.work.ParallelWork;

/**
 * A design at every combination of one or two varied quantities.
 *
 * @param design as it is
 * @param axes   what is varied, one or two
 * @param points the first quantity fastest
 */
public record TradeSweep(Design design, List<VariedQuantity> axes, List<Point> points) {

    public TradeSweep {
        axes = List.copyOf(axes);
        points = List.copyOf(points);
    }

    /**
     * One combination.
     *
     * @param values   of the quantities, base units
     * @param marginDb margin of the residual of the fullest stack at its worst point, dB; NaN without a limit or for
     *                 an impossible platform
     * @param worstHz  where
     * @param worst    axis there
     * @param coverage share of the band within the limit, 0 to 1; NaN without a limit
     * @param jitter   integrated phase noise, rad rms
     * @param travel   counted against the clearance, m; null without a platform
     * @param met      whether every requirement is met; null when nothing is stated
     * @param broken   names of what is not met
     */
    public record Point(double[] values, double marginDb, double worstHz, String worst, double coverage, double jitter,
                        double[] travel, Boolean met, List<String> broken) { }

    /** Designs of all combinations assessed in full. */
    public static TradeSweep of(Design design, List<VariedQuantity> axes, int threads, DoubleConsumer progress) {
        int nx = axes.get(0).steps();
        int count = nx * (axes.size() > 1 ? axes.get(1).steps() : 1);
        AtomicInteger done = new AtomicInteger();
        List<Supplier<Point>> parts = IntStream.range(0, count).<Supplier<Point>>mapToObj(i -> () -> {
            Point p = at(design, axes, i % nx, i / nx);
            progress.accept((double) done.incrementAndGet() / count);
            return p;
        }).toList();
        return new TradeSweep(design, axes, ParallelWork.all(parts, threads));
    }

    /** The design with quantities set. */
    static Design changed(Design design, List<VariedQuantity> axes, double[] values) {
        double[] v = design.quantities().values();
        for (int a = 0; a < axes.size(); a++) {
            for (int slot : axes.get(a).what().slots()) {
                v[slot] = values[a];
            }
        }
        return design.with(design.quantities().with(v));
    }

    private static Point at(Design design, List<VariedQuantity> axes, int i, int j) {
        double[] values = axes.size() > 1 ? new double[] {axes.get(0).value(i), axes.get(1).value(j)}
            : new double[] {axes.get(0).value(i)};
        try {
            return point(values, Assessor.assess(changed(design, axes, values)));
        } catch (SingularPlatformException e) {
            return new Point(values, Double.NaN, Double.NaN, "", Double.NaN, Double.NaN, null, false,
                List.of("impossible platform"));
        }
    }

    private static Point point(double[] values, Assessment a) {
        StackVerdict verdict = a.verdict(a.fullest());
        double[] travel = a.travel().map(Travel::counted).map(v -> v.toArray()).orElse(null);
        List<String> broken = new ArrayList<>();
        a.requirements().stream().filter(r -> !r.met()).map(RequirementResult::name).forEach(broken::add);
        return new Point(values, verdict.worst().marginDb(), verdict.worst().frequencyHz(), verdict.worst().axis(), verdict.share(),
            a.worstJitterRad(), travel, a.requirementMet().orElse(null), broken);
    }

    /**
     * The point with the largest margin of those that meet everything, or of all where none does; -1 without any
     * margin.
     */
    public int best() {
        int best = -1;
        for (int i = 0; i < points.size(); i++) {
            if (!Double.isNaN(points.get(i).marginDb()) && (best < 0 || better(points.get(i), points.get(best)))) {
                best = i;
            }
        }
        return best;
    }

    private static boolean better(Point a, Point b) {
        boolean am = Boolean.TRUE.equals(a.met());
        boolean bm = Boolean.TRUE.equals(b.met());
        return am != bm ? am : a.marginDb() > b.marginDb();
    }
}
