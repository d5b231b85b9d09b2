package quietband.motion.correction;

import java.util.List;
import java.util.Locale;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.motion.signal.BlockSignal;
import quietband.motion.signal.GridSinusoid;
import quietband.motion.signal.QuadratureSignal;
import quietband.motion.signal.SignalStream;
import quietband.motion.signal.SteadyState;
import quietband.motion.signal.TimeStepping;
import quietband.motion.signal.TriangleAverage;
import quietband.numerics.ImpossibleRequestException;
import quietband.work.HeapRoom;

/**
 * One cancellation at work: from the acceleration at the sensors to the fractional frequency it takes away. Sensors and
 * passes are analog chains; the signal is taken at k/fs less the axis's own delay and the latency, quantised, filtered,
 * weighted, led by the constant phase, held and sent through the port. An analog path is the same with the grid's own rate and no hold.
 */
public final class CancellationRun {

    /** Some 14 streams wait for what comes later, with room to grow. */
    private static final double BYTES_PER_STEP = 300;
    private static final double EVEN = 1e-6;

    private final Cancellation c;
    private final TimeStepping plan;
    private final double ratio;
    private final List<SensorChannel> channels;
    private final double[] delay;
    private final double[] direct;
    private final double[] led;
    private final AnalogChain[] chains;
    private final DigitalFilterRun[] filters;
    private final Quantiser[] converters;
    private final BlockSignal[] sensed;
    private final SignalStream[] samples;
    private final double[][] even;
    private double[] taken = new double[BlockSignal.BLOCK];
    private final SignalStream plain = new SignalStream();
    private final SignalStream quarter = new SignalStream();
    private final QuadratureSignal quadrature;
    private final TuningPortRun port;
    private final TriangleAverage averages;
    private final double decay;
    private final SignalStream grid = new SignalStream();
    private final long start;
    private long next;
    private double carry;
    private double[] settled;
    private double settledTheta;
    private HoldObserver observer = (k, level, state) -> { };

    public CancellationRun(Design design, TimeStepping plan) {
        this.c = design.cancellation().orElseThrow();
        this.plan = plan;
        double h = plan.step();
        double period = c.path().sampled() ? 1 / c.path().sampleRateHz() : h;
        ratio = plan.averaged() && c.path().sampled() ? Math.rint(period / h) : period / h;
        channels = plan.muted() ? List.of() : SensorChannel.of(design, plan.linear());
        int m = channels.size();
        delay = new double[m];
        direct = new double[m];
        led = new double[m];
        chains = new AnalogChain[m];
        filters = new DigitalFilterRun[m];
        converters = new Quantiser[m];
        samples = new SignalStream[m];
        even = new double[m][];
        sensed = BlockSignal.several(m);
        double longest = 0;
        double turned = 0;
        for (int i = 0; i < m; i++) {
            SensorChannel x = channels.get(i);
            direct[i] = x.gain() * Math.cos(x.phase());
            led[i] = x.gain() * Math.sin(x.phase());
            turned = Math.max(turned, Math.abs(Math.sin(x.phase())));
            delay[i] = x.delay() / h;
            longest = Math.max(longest, delay[i]);
            even[i] = evenly(delay[i]);
            chains[i] = AnalogChain.sensor(c, x.axis(), !plan.linear(), h);
            filters[i] = new DigitalFilterRun(c.path().filters().get(x.axis()));
            converters[i] = new Quantiser(c, x.axis(), plan.linear());
            samples[i] = new SignalStream();
        }
        start = (long) Math.ceil(longest / ratio - 1e-9);
        next = start;
        for (SignalStream t : samples) {
            t.startAt(start);
        }
        plain.startAt(start);
        quarter.startAt(start);
        quadrature = turned > 0 ? new QuadratureSignal(2 * Math.PI * plan.lowestHz() * period, turned) : null;
        port = new TuningPortRun(c, plan.linear());
        averages = new TriangleAverage(port.pole() * h);
        decay = port.decay(plan.averaged() ? h : period);
        double waits = Math.max(longest, lag());
        if (!HeapRoom.holds(BYTES_PER_STEP * waits)) {
            throw new ImpossibleRequestException(String.format(Locale.ROOT,
                "latency, delays and phase of the cancellation reach over %.3g steps of "
                + "a time grid of %.3g points a second, which takes some %.0f MB: lower --time-rate or --frequency, shorten them, or allow "
                + "more memory with java -Xmx", waits, 1 / h, BYTES_PER_STEP * waits / 1e6));
        }
        while (grid.end() < Math.ceil(start * ratio)) {
            grid.push(0);
        }
    }

    /** Looks at the staircase from now on. */
    public void observe(HoldObserver o) {
        observer = o;
    }

    /** Number of the first step of the staircase that all of the past is known for. */
    public long firstWhole() {
        return start + (quadrature == null ? 0 : quadrature.reach());
    }

    /** The hold's period in s; 0 for an analog path. */
    public double holdPeriod() {
        return c.path().sampled() ? ratio * plan.step() : 0;
    }

    public TuningPortRun port() {
        return port;
    }

    /** Sensor samples that the limiters or converters clipped, and port values beyond its range. */
    public long[] clipped() {
        long sensor = 0;
        for (int i = 0; i < chains.length; i++) {
            sensor += chains[i].clipped() + converters[i].clipped();
        }
        return new long[] {sensor, port.clipped()};
    }

    /** The cancellation at the grid's points from 0, as far as known. */
    public SignalStream grid() {
        return grid;
    }

    /** How many grid steps the result comes after the input. */
    public long lag() {
        double most = 0;
        for (double d : delay) {
            most = Math.max(most, -d);
        }
        return (long) Math.ceil(most + ratio * (2 + (quadrature == null ? 0 : quadrature.reach()))) + 2;
    }

    /** What each channel takes of the accelerations at the sensors, row by row. */
    public List<double[]> rows() {
        return channels.stream().map(SensorChannel::row).toList();
    }

    /**
     * Takes a block.
     *
     * @param input one signal per channel, by {@link #rows()}, in g; not modified
     * @param step  number of its point 0
     */
    public void run(BlockSignal[] input, long step, int n) {
        long known = channels.isEmpty() ? (long) Math.ceil((step + n) / ratio) : Long.MAX_VALUE;
        for (int i = 0; i < channels.size(); i++) {
            chains[i].run(input[i], sensed[i], n);
            sample(i, step, n);
            known = Math.min(known, samples[i].end());
        }
        for (long k = plain.end(); k < known; k++) {
            combine(k);
        }
        for (SignalStream t : samples) {
            t.dropBefore(known);
        }
        stairs();
    }

    private void sample(int i, long step, int n) {
        SignalStream t = samples[i];
        BlockSignal s = sensed[i];
        double first = t.end() * ratio - delay[i] - step;
        int count = (int) Math.max(0, Math.ceil((n - first) / ratio));
        double[] w = even[i];
        if (count > taken.length) {
            taken = new double[count];
        }
        for (int m = 0; m < count; m++) {
            double local = first + m * ratio;
            int j = Math.max(0, Math.min(n - 1, (int) Math.floor(local + (w == null ? 0 : EVEN))));
            taken[m] = w == null ? s.at(j, Math.max(0, local - j))
                : w[0] * s.value[j] + w[1] * s.value[j + 1] + w[2] * s.slope[j] + w[3] * s.slope[j + 1];
        }
        converters[i].convert(taken, count);
        t.push(taken, count);
    }

    /** Weights of the cubic where every sample lies at the same fraction of a step; null where it does not. */
    private double[] evenly(double delaySteps) {
        if (ratio != Math.rint(ratio)) {
            return null;
        }
        double s = Math.ceil(delaySteps - EVEN) - delaySteps;
        s = Math.max(0, s);
        double r = 1 - s;
        return new double[] {r * r * (1 + 2 * s), s * s * (3 - 2 * s), s * r * r, -s * s * r};
    }

    private void combine(long k) {
        double sum = 0;
        double quad = 0;
        for (int i = 0; i < filters.length; i++) {
            double r = filters[i].next(samples[i].get(k));
            sum += direct[i] * r;
            quad += led[i] * r;
        }
        plain.push(sum);
        if (quadrature != null) {
            quadrature.push(quad, quarter);
        }
    }

    private void stairs() {
        long known = quadrature == null ? plain.end() : quarter.end();
        for (; next < known; next++) {
            double level = port.limited(plain.get(next) + (quadrature == null ? 0 : quarter.get(next)));
            if (settled != null && next == firstWhole()) {
                double a = settledTheta * (next - start);
                port.state(settled[0] * Math.cos(a) - settled[1] * Math.sin(a));
            }
            step(level);
        }
        plain.dropBefore(next);
        quarter.dropBefore(next);
    }

    private void step(double level) {
        if (!c.path().sampled()) {
            grid.push(port.bent(level));
            return;
        }
        observer.step(next, level, port.state());
        if (plan.averaged()) {
            for (int q = 0; q < ratio; q++) {
                double e = port.state() - level;
                double flat = port.bent(level);
                double first = e * (1 + 2 * port.bend() * level);
                double second = port.bend() * e * e;
                grid.push(carry + flat / 2 + first * averages.falling1 + second * averages.falling2);
                carry = flat / 2 + first * averages.rising1 + second * averages.rising2;
                port.advance(level, decay);
            }
            return;
        }
        double e = port.state() - level;
        while (grid.end() < (next + 1) * ratio) {
            double after = Math.max(0, grid.end() - next * ratio) * plan.step();
            grid.push(port.bent(level + e * port.decay(after)));
        }
        port.advance(level, decay);
    }

    /** Starts in the periodic state under sinusoids, one per channel, seen from grid point 0. */
    public void settle(GridSinusoid[] input, double theta) {
        double turn = theta * ratio;
        double re = 0;
        double im = 0;
        for (int i = 0; i < channels.size(); i++) {
            GridSinusoid p = input[i];
            p = chains[i].settle(p, theta);
            double at = start * ratio - delay[i];
            double whole = Math.floor(at);
            double[] u = p.at(at - whole, theta);
            double cos = Math.cos(theta * whole);
            double sin = Math.sin(theta * whole);
            double[] r = filters[i].settle(u[0] * cos - u[1] * sin, u[1] * cos + u[0] * sin, turn);
            re += direct[i] * r[0] - led[i] * r[1];
            im += direct[i] * r[1] + led[i] * r[0];
        }
        double d = port.decay(holdPeriod());
        double[] xr = {re * (1 - d)};
        double[] xi = {im * (1 - d)};
        if (d > 0) {
            SteadyState.solve(new double[][] {{d}}, turn, xr, xi);
            settled = new double[] {xr[0], xi[0]};
            settledTheta = turn;
        }
    }

    /** Gives what is still possible when no more input comes. */
    public void finish() {
        if (quadrature != null) {
            quadrature.flush(quarter);
        }
        stairs();
    }
}
