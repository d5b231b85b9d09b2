package quietband.motion.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ForkJoinPool;
import java.util.function.DoubleConsumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import quietband.demand.ResidualDemand;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Resonance;
import quietband.model.Stack;
import quietband.motion.signal.LossModel;
import quietband.platform.Assembly;
import quietband.platform.Resonances;
import quietband.spectrum.LogGrid;

/**
 * A sine sweep in steps: at every frequency, one axis after another, the motion is stepped in the periodic steady state and the
 * component at the drive's frequency taken. Edges of the coverage are closed in by further frequencies. Everything comes from
 * the equations of motion.
 */
public final class SineSweep {

    private static final int OWN_POINTS = 160;
    private static final int IN_WIDTH = 3;
    private static final double EDGE = 1e-5;
    private static final double NEAR_DB = 1;
    private static final double PERIODS = 4;

    /**
     * What is asked.
     *
     * @param axes        driven one after another
     * @param frequencies of the table, Hz
     * @param peakG       of the drive, g
     * @param linear      without clipping, quantising, slack, stops and curvature
     * @param octavesPerMinute how long each frequency is driven: its share of an octave at this rate, up and down; infinite: as
     *                    long as it takes to measure
     * @param threads     how many share the work
     */
    public record Request(List<Axis> axes, double[] frequencies, double peakG, boolean linear, double octavesPerMinute,
                          int threads) { }

    /**
     * One frequency.
     *
     * @param frequencyHz where
     * @param residual    |y_j|, 1/g, per stack and axis; NaN for an axis not driven
     * @param findings    what the dwells met, per driven axis
     */
    public record Point(double frequencyHz, double[][] residual, List<Dwell.Result> findings) {

        /** Root of the sum of squares over the driven axes, 1/g. */
        public double vector(int stack) {
            double sum = 0;
            for (double y : residual[stack]) {
                sum += Double.isNaN(y) ? 0 : y * y;
            }
            return Math.sqrt(sum);
        }
    }

    /**
     * What came out.
     *
     * @param stacks    order of the points' rows
     * @param points    at the asked frequencies
     * @param bands     coverage per stack, over the requirement's band
     * @param simulated time simulated, s
     * @param dwells    how many frequencies and axes were driven altogether
     */
    public record Result(List<Stack> stacks, List<Point> points, List<SweepCoverage> bands, double simulated, int dwells) { }

    private final Design design;
    private final Request request;
    private final ResidualDemand demand;
    private final DoubleConsumer progress;
    private final NavigableMap<Double, Point> done = new TreeMap<>();
    private final double octaves;
    private final ForkJoinPool pool;

    private SineSweep(Design design, Request request, DoubleConsumer progress) {
        this.design = design;
        this.request = request;
        this.progress = progress;
        this.demand = new ResidualDemand(design);
        pool = new ForkJoinPool(Math.max(1, request.threads));
        octaves = request.frequencies.length < 2 ? 1 : Math.log(request.frequencies[request.frequencies.length - 1]
            / request.frequencies[0]) / Math.log(2) / (request.frequencies.length - 1);
    }

    /**
     * Runs a sweep.
     *
     * @param progress told the share done, 0 to 1
     */
    public static Result run(Design design, Request request, DoubleConsumer progress) {
        SineSweep sweep = new SineSweep(design, request, progress);
        try {
            return sweep.run();
        } finally {
            sweep.pool.shutdownNow();
        }
    }

    private Result run() {
        TreeSet<Double> wanted = new TreeSet<>();
        for (double f : request.frequencies) {
            wanted.add(f);
        }
        TreeSet<Double> all = new TreeSet<>(wanted);
        all.addAll(ownGrid());
        drive(List.copyOf(all), 0.9);
        List<Stack> stacks = Stack.of(design);
        List<SweepCoverage> bands = new ArrayList<>();
        for (int s = 0; s < stacks.size(); s++) {
            bands.add(band(stacks.get(s), s));
        }
        progress.accept(1);
        List<Point> points = new ArrayList<>();
        for (double f : request.frequencies) {
            points.add(done.get(f));
        }
        double simulated = done.values().stream().flatMap(p -> p.findings.stream()).mapToDouble(Dwell.Result::simulated).sum();
        return new Result(stacks, points, bands, simulated, done.size() * request.axes.size());
    }

    /** A logarithmic grid over the band with some points in the half-power width of every resonance. */
    private Set<Double> ownGrid() {
        double from = design.requirement().fromHz();
        double to = design.requirement().toHz();
        TreeSet<Double> grid = new TreeSet<>();
        if (!demand.asked()) {
            return grid;
        }
        for (double f : LogGrid.between(OWN_POINTS, from, to)) {
            grid.add(f);
        }
        design.platform().ifPresent(p -> Resonances.between(new Assembly(p), from, to)
            .forEach(r -> around(grid, r.frequencyHz(), r.widthHz())));
        around(grid, design.oscillator().resonator().supportResonance());
        design.cancellation().ifPresent(c -> around(grid, c.sensor().resonance()));
        return grid;
    }

    private void around(Set<Double> grid, Resonance r) {
        for (int i = 0; i < 3; i++) {
            if (r.on(i)) {
                around(grid, r.frequencyHz().get(i), r.frequencyHz().get(i) / r.q().get(i));
            }
        }
    }

    private void around(Set<Double> grid, double centre, double width) {
        for (int i = -IN_WIDTH; i <= IN_WIDTH; i++) {
            double f = centre + i * width / IN_WIDTH;
            if (f > design.requirement().fromHz() && f < design.requirement().toHz()) {
                grid.add(f);
            }
        }
    }

    /** Drives frequencies that have not been driven yet, several at a time. */
    private void drive(List<Double> frequencies, double share) {
        List<Double> open = frequencies.stream().filter(f -> !done.containsKey(f)).toList();
        int batch = 32;
        for (int from = 0; from < open.size(); from += batch) {
            List<Double> part = open.subList(from, Math.min(open.size(), from + batch));
            List<Point> points = request.threads == 1 ? part.stream().map(this::point).toList()
                : pool.submit(() -> part.parallelStream().map(this::point).collect(Collectors.toList())).join();
            points.forEach(p -> done.put(p.frequencyHz, p));
            if (share > 0) {
                progress.accept(share * (from + part.size()) / open.size());
            }
        }
    }

    private Point point(double f) {
        double[][] y = new double[Stack.of(design).size()][3];
        for (double[] row : y) {
            Arrays.fill(row, Double.NaN);
        }
        List<Dwell.Result> findings = new ArrayList<>();
        double slow = 2 * 60 * Math.abs(octaves) / request.octavesPerMinute;
        Dwell.Shared shared = Dwell.Shared.of(design, f, Math.max(PERIODS / f, slow), request.linear, LossModel.at(f));
        for (Axis axis : request.axes) {
            Dwell.Result r = Dwell.run(design, new Dwell.Request(axis, f, request.peakG, 0, request.linear), shared);
            for (int s = 0; s < y.length; s++) {
                y[s][axis.ordinal()] = r.sensitivityPerG(r.stacks().get(s));
            }
            findings.add(r);
        }
        return new Point(f, y, findings);
    }

    /** dB over the limit, or without a limit over 1 ppb/g, of the worst axis or the vector. */
    private double over(Point p, int stack) {
        return demand.overDb(p.frequencyHz, ResidualDemand.squares(p.residual[stack]));
    }

    private SweepCoverage band(Stack stack, int s) {
        double from = design.requirement().fromHz();
        double to = design.requirement().toHz();
        List<double[]> inside = new ArrayList<>();
        if (demand.asked()) {
            turns(s, from, to);
            List<Point> nodes = new ArrayList<>(done.subMap(from, true, to, true).values());
            double start = over(nodes.get(0), s) <= 0 ? from : Double.NaN;
            for (int i = 1; i < nodes.size(); i++) {
                boolean was = over(nodes.get(i - 1), s) <= 0;
                boolean is = over(nodes.get(i), s) <= 0;
                if (was && !is) {
                    inside.add(new double[] {start, edge(nodes.get(i - 1).frequencyHz, nodes.get(i).frequencyHz, s)});
                    start = Double.NaN;
                } else if (!was && is) {
                    start = edge(nodes.get(i).frequencyHz, nodes.get(i - 1).frequencyHz, s);
                }
            }
            if (!Double.isNaN(start)) {
                inside.add(new double[] {start, to});
            }
        }
        Point worst = done.firstEntry().getValue();
        for (Point p : done.values()) {
            worst = over(p, s) > over(worst, s) ? p : worst;
        }
        double share = inside.stream().mapToDouble(i -> Math.log(i[1] / i[0])).sum() / Math.log(to / from);
        return new SweepCoverage(stack, demand.asked(), inside, demand.asked() ? share : Double.NaN, worst.frequencyHz,
            demand.perG(ResidualDemand.squares(worst.residual[s])));
    }

    /** Looks closer where a local extremum lies near the limit on either side of it. */
    private void turns(int s, double from, double to) {
        List<Point> nodes = new ArrayList<>(done.subMap(from, true, to, true).values());
        for (int i = 1; i + 1 < nodes.size(); i++) {
            double v = over(nodes.get(i), s);
            double left = over(nodes.get(i - 1), s);
            double right = over(nodes.get(i + 1), s);
            boolean top = v <= 0 && v > -NEAR_DB && v >= left && v >= right;
            boolean bottom = v > 0 && v < NEAR_DB && v <= left && v <= right;
            if (top || bottom) {
                double lo = nodes.get(i - 1).frequencyHz;
                double hi = nodes.get(i + 1).frequencyHz;
                drive(IntStream.range(1, 16).mapToObj(k -> lo * Math.pow(hi / lo, k / 16.0)).toList(), 0);
            }
        }
    }

    /** Closes in an edge between a frequency inside and one outside; the inner side. */
    private double edge(double inside, double outside, int s) {
        double in = inside;
        double out = outside;
        while (Math.abs(out - in) > EDGE * in) {
            double middle = Math.sqrt(in * out);
            drive(List.of(middle), 0);
            if (over(done.get(middle), s) <= 0) {
                in = middle;
            } else {
                out = middle;
            }
        }
        return in;
    }
}
