package quietband.motion;

import quietband.model.Cancellation;
import quietband.model.Design;

/**
 * One correction at work: from the acceleration at the sensors to the fractional frequency it takes away. Sensors and
 * passes are analog chains; the signal is taken at k/fs less the axis's own delay and the latency, quantised, filtered,
 * weighted, led by the constant phase, held and sent through the port. An analog path is the same with the grid's own rate and no hold.
 */
final class Correction {

    private static final double EVEN = 1e-6;

    private final Cancellation c;
    private final Plan plan;
    private final double ratio;
    private final double[] delay = new double[3];
    private final double[] direct = new double[3];
    private final double[] led = new double[3];
    private final boolean[] used = new boolean[3];
    private final Chain[] chains = new Chain[3];
    private final DigitalRun[] filters = new DigitalRun[3];
    private final Converter[] converters = new Converter[3];
    private final Signal[] sensed = Signal.several(3);
    private final Track[] samples = new Track[3];
    private final double[][] even = new double[3][];
    private double[] taken = new double[Signal.BLOCK];
    private final Track plain = new Track();
    private final Track quarter = new Track();
    private final Quadrature quadrature;
    private final Port port;
    private final Averages averages;
    private final double decay;
    private final Track grid = new Track();
    private final long start;
    private long next;
    private double carry;
    private double[] settled;
    private double settledTheta;
    private HoldObserver observer = (k, level, state) -> { };

    Correction(Design design, Plan plan) {
        this.c = design.cancellation().orElseThrow();
        this.plan = plan;
        double h = plan.step();
        double period = c.path().sampled() ? 1 / c.path().sampleRateHz() : h;
        ratio = plan.averaged() && c.path().sampled() ? Math.rint(period / h) : period / h;
        double longest = 0;
        double turned = 0;
        for (int i = 0; i < 3; i++) {
            double weight = design.weightsPerG().get(i) * (1 + c.error().gain().get(i));
            double phase = c.error().phase().get(i);
            used[i] = weight != 0 && !plan.muted();
            direct[i] = weight * Math.cos(phase);
            led[i] = weight * Math.sin(phase);
            turned = used[i] ? Math.max(turned, Math.abs(Math.sin(phase))) : turned;
            delay[i] = (c.path().latency() + c.error().delay().get(i)) / h;
            longest = used[i] ? Math.max(longest, delay[i]) : longest;
            even[i] = evenly(delay[i]);
            chains[i] = Chain.sensor(c, i, !plan.linear(), h);
            filters[i] = new DigitalRun(c.path().filters().get(i));
            converters[i] = new Converter(c, i, plan.linear());
            samples[i] = new Track();
        }
        start = (long) Math.ceil(longest / ratio - 1e-9);
        next = start;
        for (Track t : new Track[] {samples[0], samples[1], samples[2], plain, quarter}) {
            t.startAt(start);
        }
        quadrature = turned > 0 ? new Quadrature(2 * Math.PI * plan.lowestHz() * period, turned) : null;
        port = new Port(c, plan.linear());
        averages = new Averages(port.pole() * h);
        decay = port.decay(plan.averaged() ? h : period);
        while (grid.end() < Math.ceil(start * ratio)) {
            grid.push(0);
        }
    }

    /** Looks at the staircase from now on. */
    void observe(HoldObserver o) {
        observer = o;
    }

    /** Number of the first step of the staircase that all of the past is known for. */
    long firstWhole() {
        return start + (quadrature == null ? 0 : quadrature.reach());
    }

    /** The hold's period in s; 0 for an analog path. */
    double holdPeriod() {
        return c.path().sampled() ? ratio * plan.step() : 0;
    }

    Port port() {
        return port;
    }

    /** Sensor samples that the limiters or converters clipped, and port values beyond its range. */
    long[] clipped() {
        long sensor = 0;
        for (int i = 0; i < 3; i++) {
            sensor += chains[i].clipped() + converters[i].clipped();
        }
        return new long[] {sensor, port.clipped()};
    }

    /** The correction at the grid's points from 0, as far as known. */
    Track grid() {
        return grid;
    }

    /** How many grid steps the result comes after the input. */
    long lag() {
        double most = Math.max(0, -Math.min(delay[0], Math.min(delay[1], delay[2])));
        return (long) Math.ceil(most + ratio * (2 + (quadrature == null ? 0 : quadrature.reach()))) + 2;
    }

    /**
     * Takes a block.
     *
     * @param acceleration at the sensors, g, three signals
     * @param step         number of its point 0
     */
    void run(Signal[] acceleration, long step, int n) {
        for (int i = 0; i < 3; i++) {
            if (used[i]) {
                read(i, acceleration, n);
                chains[i].run(sensed[i], sensed[i], n);
                sample(i, step, n);
            } else {
                silent(i, step, n);
            }
        }
        long known = Math.min(samples[0].end(), Math.min(samples[1].end(), samples[2].end()));
        for (long k = plain.end(); k < known; k++) {
            combine(k);
        }
        for (Track t : samples) {
            t.dropBefore(known);
        }
        stairs();
    }

    private void read(int i, Signal[] a, int n) {
        double x0 = c.sensor().crossAxis().get(3 * i);
        double x1 = c.sensor().crossAxis().get(3 * i + 1);
        double x2 = c.sensor().crossAxis().get(3 * i + 2);
        for (int k = 0; k <= n; k++) {
            sensed[i].value[k] = x0 * a[0].value[k] + x1 * a[1].value[k] + x2 * a[2].value[k];
            sensed[i].slope[k] = x0 * a[0].slope[k] + x1 * a[1].slope[k] + x2 * a[2].slope[k];
        }
    }

    private void sample(int i, long step, int n) {
        Track t = samples[i];
        Signal s = sensed[i];
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

    private void silent(int i, long step, int n) {
        while (samples[i].end() * ratio - delay[i] < step + n) {
            samples[i].push(0);
        }
    }

    private void combine(long k) {
        double sum = 0;
        double quad = 0;
        for (int i = 0; i < 3; i++) {
            if (used[i]) {
                double r = filters[i].next(samples[i].get(k));
                sum += direct[i] * r;
                quad += led[i] * r;
            }
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

    /** Starts in the periodic state under sinusoidal acceleration at the sensors, seen from grid point 0. */
    void settle(Phasor[] acceleration, double theta) {
        double turn = theta * ratio;
        double re = 0;
        double im = 0;
        for (int i = 0; i < 3; i++) {
            if (!used[i]) {
                continue;
            }
            Phasor p = Phasor.ZERO;
            for (int k = 0; k < 3; k++) {
                p = p.plus(acceleration[k].times(c.sensor().crossAxis().get(3 * i + k)));
            }
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
    void finish() {
        if (quadrature != null) {
            quadrature.flush(quarter);
        }
        stairs();
    }
}
