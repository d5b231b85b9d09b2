package quietband.motion.correction;

import java.util.ArrayList;
import java.util.List;
import quietband.model.Cancellation;
import quietband.model.Cancellation.Pass;
import quietband.model.Resonance;
import quietband.motion.signal.AnalogStage;
import quietband.motion.signal.BlockSignal;
import quietband.motion.signal.GridSinusoid;

/**
 * Analog elements of one axis in a row, with an optional limiter after some of them. The elements are those of the
 * design: poles, resonances and Butterworth passes as first and second order sections.
 */
final class AnalogChain {

    private final List<AnalogStage> before = new ArrayList<>();
    private final List<AnalogStage> after = new ArrayList<>();
    private final double range;
    private long clipped;

    private AnalogChain(double range) {
        this.range = range;
    }

    /** Resonator on its support, H = (1 + p/Q)/(1 + p/Q + p^2). */
    static AnalogChain support(Resonance r, int axis, double h) {
        AnalogChain chain = new AnalogChain(Double.POSITIVE_INFINITY);
        if (r.on(axis)) {
            double damping = 1 / r.q().get(axis);
            chain.before.add(AnalogStage.second(r.frequencyHz().get(axis), damping, 1, damping, 0, h));
        }
        return chain;
    }

    /**
     * Sensor, limiter, high pass, low pass and, in an analog path, the tuning port's pole.
     *
     * @param limited whether the sensor clips at its range
     */
    static AnalogChain sensor(Cancellation c, int axis, boolean limited, double h) {
        AnalogChain chain = new AnalogChain(limited ? c.sensor().rangeG().get(axis) : Double.POSITIVE_INFINITY);
        double pole = c.sensor().bandwidthHz().get(axis);
        if (Double.isFinite(pole)) {
            chain.before.add(AnalogStage.first(pole, false, h));
        }
        Resonance r = c.sensor().resonance();
        if (r.on(axis)) {
            chain.before.add(AnalogStage.second(r.frequencyHz().get(axis), 1 / r.q().get(axis), 1, 0, 0, h));
        }
        c.path().highPass().ifPresent(p -> chain.pass(p, true, h));
        c.path().lowPass().ifPresent(p -> chain.pass(p, false, h));
        if (!c.path().sampled() && Double.isFinite(c.tuning().bandwidthHz())) {
            chain.after.add(AnalogStage.first(c.tuning().bandwidthHz(), false, h));
        }
        return chain;
    }

    /** Butterworth: pairs 1/(1 + 2 sin((2k+1) pi/(2n)) p + p^2) and, for an odd order, one pole. */
    private void pass(Pass pass, boolean high, double h) {
        int n = pass.order();
        for (int k = 0; k < n / 2; k++) {
            double a1 = 2 * Math.sin((2 * k + 1) * Math.PI / (2 * n));
            after.add(AnalogStage.second(pass.frequencyHz(), a1, high ? 0 : 1, 0, high ? 1 : 0, h));
        }
        if (n % 2 == 1) {
            after.add(AnalogStage.first(pass.frequencyHz(), high, h));
        }
    }

    /** Steps through n steps; the output may be the input. */
    void run(BlockSignal in, BlockSignal out, int n) {
        BlockSignal from = in;
        for (AnalogStage s : before) {
            s.run(from, out, n);
            from = out;
        }
        if (from != out) {
            System.arraycopy(from.value, 0, out.value, 0, n + 1);
            System.arraycopy(from.slope, 0, out.slope, 0, n + 1);
        }
        if (Double.isFinite(range)) {
            limit(out, n);
        }
        for (AnalogStage s : after) {
            s.run(out, out, n);
        }
    }

    private void limit(BlockSignal s, int n) {
        for (int k = 0; k <= n; k++) {
            if (Math.abs(s.value[k]) > range) {
                s.value[k] = Math.copySign(range, s.value[k]);
                s.slope[k] = 0;
                clipped += k < n ? 1 : 0;
            }
        }
    }

    /** Starts in the periodic state under a sinusoid, the limiter not acting. */
    GridSinusoid settle(GridSinusoid in, double theta) {
        GridSinusoid p = in;
        for (AnalogStage s : before) {
            p = s.settle(p, theta);
        }
        for (AnalogStage s : after) {
            p = s.settle(p, theta);
        }
        return p;
    }

    /** Grid points at which the limiter acted. */
    long clipped() {
        return clipped;
    }
}
