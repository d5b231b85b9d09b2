package quietband.motion.run;

import java.util.List;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.motion.drive.SineDrive;
import quietband.motion.platform.ContactRecord;
import quietband.motion.platform.PlatformModel;
import quietband.motion.signal.LossModel;
import quietband.motion.signal.TimeStepping;

/**
 * A sinusoidal dwell: the component of every stack's fractional frequency at the drive's frequency in the periodic steady
 * state, over whole periods.
 */
public final class Dwell {

    private static final int STEPS_PER_PERIOD = 96;
    private static final double FINEST = 20e-6;
    private static final double IMAGE_TURNS = 12;
    private static final double SETTLED = 1e-4;
    private static final double NEARLY = 5e-3;
    private static final int MOST_WINDOWS = 60;

    /**
     * What is asked.
     *
     * @param axis        along which the housing moves
     * @param frequencyHz of the drive, above 0
     * @param peakG       of the drive, g, above 0
     * @param duration    of the steady state, s; whole periods of it are taken, a few at least
     * @param linear      without clipping, quantising, slack, stops and curvature
     */
    public record Request(Axis axis, double frequencyHz, double peakG, double duration, boolean linear) { }

    /**
     * What came out.
     *
     * @param stacks    order of the amplitudes
     * @param re        real part of y_j per stack, 1/g, for exp(+j w t) and a drive cos(w t)
     * @param im        imaginary part
     * @param simulated simulated time, s
     * @param settled   whether the component stopped changing before it was taken
     * @param contacts  what stops and seats did
     * @param clipped   samples clipped: at the sensors, at the port, over both cancellations
     * @param travel    peak displacement, m; zero without a platform
     */
    public record Result(List<Stack> stacks, double[] re, double[] im, double simulated, boolean settled,
                         List<ContactRecord> contacts, long[] clipped, Vec travel) {

        /** |y_j| of a stack, 1/g. */
        public double sensitivityPerG(Stack s) {
            int i = stacks.indexOf(s);
            return Math.hypot(re[i], im[i]);
        }

        /** Phase of y_j, deg. */
        public double phaseDeg(Stack s) {
            int i = stacks.indexOf(s);
            return Math.toDegrees(Math.atan2(im[i], re[i]));
        }
    }

    private final Request request;
    private final double f;
    private final double step;
    private final SimulationPass engine;
    private final WindowedComponent windows;
    private final double start;
    private final double length;
    private final double settling;
    private final GridBlock.Sink also;

    /**
     * How dwells at one frequency are stepped, for all axes and levels alike.
     *
     * @param periods  whole periods in each of the four stretches of a window
     * @param settling time after which what does not repeat exactly (quantising) counts as settled, s
     */
    record Shared(TimeStepping plan, PlatformModel platform, double periods, double settling) {

        static Shared of(Design design, double f, double duration, boolean linear, LossModel loss) {
            double fs = design.cancellation().map(c -> c.path().sampleRateHz()).orElse(0.0);
            int perPeriod = STEPS_PER_PERIOD;
            if (!linear) {
                perPeriod = (int) Math.max(perPeriod, Math.ceil(1 / (f * FINEST)));
            }
            boolean muted = linear && fs > 0 && f > fs / 2;
            double periods = Math.max(1, Math.floor(duration * f / (linear ? 4 : 8)));
            if (fs > 0 && !muted && fs != 2 * f) {
                double apart = Math.min(Math.abs(fs - 2 * f), fs);
                periods = Math.max(periods, Math.ceil(Math.min(IMAGE_TURNS * f / apart, 20 * f)));
            }
            long points = (long) (4 * periods * perPeriod);
            TimeStepping plan = new TimeStepping(1 / (f * perPeriod), linear, loss, false, 0.9 * Math.min(f, fold(f, fs)), points, muted);
            return new Shared(plan, design.platform().isPresent() ? PlatformModel.of(design, plan) : null, periods,
                linear ? 0 : VibrationRun.settling(design));
        }
    }

    private Dwell(Design design, Request request, Shared shared, GridBlock.Sink also) {
        this.request = request;
        this.also = also;
        f = request.frequencyHz();
        step = shared.plan.step();
        settling = shared.settling;
        engine = new SimulationPass(design, shared.plan, shared.platform);
        length = shared.periods / f;
        double fs = design.cancellation().map(c -> c.path().sampleRateHz()).orElse(0.0);
        double whole = engine.stacks().contains(Stack.CANCELLED)
            ? engine.correction(Stack.CANCELLED).firstWhole() * Math.max(engine.correction(Stack.CANCELLED).holdPeriod(),
                fs > 0 ? 0 : step) : 0;
        start = Math.ceil(whole * f + 1) / f;
        windows = new WindowedComponent(design, 2 * Math.PI * f, step, start, length);
        for (Stack s : engine.stacks()) {
            if (s.corrected() && fs > 0) {
                engine.correction(s).observe(windows.observer(s, engine.correction(s)));
            }
        }
    }

    /** Where a frequency comes to lie below half the sample rate. */
    private static double fold(double f, double fs) {
        return fs > 0 ? Math.max(Math.abs(f - fs * Math.rint(f / fs)), 1e-3 * fs) : f;
    }

    /**
     * Runs a dwell; a loss factor is the damper eta k/w at the drive's frequency.
     *
     * @throws NoSteadyStateException when an undamped resonance is driven at its own frequency
     */
    public static Result run(Design design, Request request) {
        return run(design, request, shared(design, request));
    }

    private static Shared shared(Design design, Request request) {
        return Shared.of(design, request.frequencyHz(), request.duration(), request.linear(), LossModel.at(request.frequencyHz()));
    }

    /** The same with the motion of the steady state, up to a number of points. */
    public static Traced traced(Design design, Request request, int rows) {
        Shared shared = shared(design, request);
        double step = shared.plan.step();
        PassRecorder[] recorder = new PassRecorder[1];
        long start = System.nanoTime();
        Dwell dwell = new Dwell(design, request, shared, frame -> recorder[0].accept(frame));
        recorder[0] = new PassRecorder(Stack.of(design),
            new PassRecorder.Keep(step, Math.round(dwell.start / step), 1, 0.4 / step, rows, 0));
        Result result = dwell.run();
        double elapsed = Math.max(1e-9, (System.nanoTime() - start) * 1e-9);
        return new Traced(result, recorder[0].trace(), recorder[0].peak(), recorder[0].rms(), elapsed);
    }

    /**
     * A dwell with its motion.
     *
     * @param peak    largest |fractional frequency| per stack
     * @param rms     its rms
     * @param elapsed time it took, s
     */
    public record Traced(Result result, MotionTrace trace, double[] peak, double[] rms, double elapsed) { }

    /** The same with what several dwells share; the request's duration no longer counts. */
    static Result run(Design design, Request request, Shared shared) {
        return new Dwell(design, request, shared, frame -> true).run();
    }

    private Result run() {
        double theta = 2 * Math.PI * f * step;
        SineDrive drive = new SineDrive(request.axis(), theta, request.peakG());
        engine.settle(drive.phasors(), theta);
        int wanted = request.linear() ? 1 : 2;
        int window = 0;
        boolean settled = request.linear();
        double[][] last = null;
        double[][] mean = null;
        int counted = 0;
        while (counted < wanted) {
            double end = start + 4 * length * (window + 1);
            engine.run(drive, (long) Math.ceil(end / step) + 2, frame -> {
                windows.frame(frame);
                return also.accept(frame);
            });
            double[][] now = windows.amplitudes(window++);
            double time = 4 * length * window;
            settled = settled || (last != null && (close(last, now, SETTLED) || (time > settling && close(last, now, NEARLY))));
            if (settled || window >= MOST_WINDOWS) {
                mean = mean == null ? now : plus(mean, now);
                counted++;
            }
            last = now;
        }
        return result(mean, counted, window, settled);
    }

    private Result result(double[][] sum, int counted, int window, boolean settled) {
        int n = engine.stacks().size();
        double[] re = new double[n];
        double[] im = new double[n];
        for (int i = 0; i < n; i++) {
            re[i] = sum[i][0] / (counted * request.peakG());
            im[i] = sum[i][1] / (counted * request.peakG());
        }
        return new Result(engine.stacks(), re, im, start + 4 * length * window, settled, PassEvents.contacts(engine),
            PassEvents.clipped(engine), PassEvents.travel(engine));
    }

    /** Whether no component has changed by more than a share of the bare one, or less than that of itself. */
    private static boolean close(double[][] a, double[][] b, double share) {
        for (int i = 0; i < a.length; i++) {
            double off = Math.hypot(a[i][0] - b[i][0], a[i][1] - b[i][1]);
            if (off > 0.1 * share * Math.hypot(b[0][0], b[0][1]) && off > share * Math.hypot(b[i][0], b[i][1])) {
                return false;
            }
        }
        return true;
    }

    private static double[][] plus(double[][] a, double[][] b) {
        double[][] sum = new double[a.length][2];
        for (int i = 0; i < a.length; i++) {
            sum[i][0] = a[i][0] + b[i][0];
            sum[i][1] = a[i][1] + b[i][1];
        }
        return sum;
    }
}
