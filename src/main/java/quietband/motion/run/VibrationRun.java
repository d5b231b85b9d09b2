package quietband.motion.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.model.Vibration.Shock;
import quietband.motion.drive.Drive;
import quietband.motion.drive.MotionRecord;
import quietband.motion.drive.MotionRecordDrive;
import quietband.motion.drive.NoiseDrive;
import quietband.motion.drive.PulseDrive;
import quietband.motion.platform.ContactRecord;
import quietband.motion.signal.LossModel;
import quietband.motion.signal.TimeStepping;
import quietband.numerics.ImpossibleRequestException;
import quietband.platform.Assembly;
import quietband.platform.DynamicStiffness;
import quietband.spectrum.LogCurve;
import quietband.spectrum.Welch;
import quietband.vibration.Pulse;

/** A pass under random vibration, a shock or recorded motion, from rest. */
public final class VibrationRun {

    /** Points per second of the grid over the highest frequency of the drive: a cubic between them misses 1e-5. */
    private static final double PER_TOP = 25;
    private static final double LONGEST_SETTLING = 10;
    private static final double LEAD = 5e-3;
    private static final int LARGEST_SEGMENT = 1 << 21;
    private static final int AVERAGES = 220;

    /**
     * Choices of every pass.
     *
     * @param linear   without clipping, quantising, slack, stops and curvature
     * @param duration that counts, s; 0 for the drive's own
     * @param fullRate trace at the grid's rate, without decimation
     * @param rows     most rows of the trace
     * @param gridHz   points of the time grid per second; 0 for as many as the drive needs
     */
    public record Options(boolean linear, double duration, boolean fullRate, int rows, double gridHz) { }

    /**
     * What came out.
     *
     * @param axis      what moved: x, y, z or all
     * @param simulated time simulated, s
     * @param elapsed   time it took, s
     * @param gridHz    points of the time grid per second
     * @param stacks    order of the stacks
     * @param peak      largest |fractional frequency| per stack, start-up apart
     * @param rms       its rms, start-up apart
     * @param travel    peak displacement per axis over all points of the platform, m
     * @param centre    peak displacement of the centre of gravity, m
     * @param contacts  what stops and seats did
     * @param clipped   samples clipped: at sensors and converters, at the port
     * @param trace     signals over time
     * @param spectra   averaged densities of the three drives and the stacks; empty where nothing is averaged
     * @param notes     how it was done, in sentences
     * @param stopped   whether it was stopped early
     */
    public record Result(String axis, double simulated, double elapsed, double gridHz, List<Stack> stacks, double[] peak,
                         double[] rms, Vec travel, Vec centre, List<ContactRecord> contacts, long[] clipped, MotionTrace trace,
                         Optional<Welch> spectra, List<String> notes, boolean stopped) { }

    private final Options options;
    private final PassMonitor monitor;
    private final double step;
    private final double topHz;
    private final List<String> notes = new ArrayList<>();
    private final SimulationPass engine;

    private VibrationRun(Design design, Options options, PassMonitor monitor, double topHz, double step, double seconds) {
        this.options = options;
        this.monitor = monitor;
        this.topHz = topHz;
        this.step = step;
        double fs = design.cancellation().map(c -> c.path().sampleRateHz()).orElse(0.0);
        boolean averaged = fs > 0 && Math.abs(1 / (fs * step) - Math.rint(1 / (fs * step))) < 1e-9 && 1 / (fs * step) > 0.5;
        TimeStepping plan = new TimeStepping(step, options.linear, LossModel.fit(topHz), averaged, design.requirement().fromHz() / 2,
            (long) (seconds / step), false);
        engine = new SimulationPass(design, plan);
        MethodText.describe(engine, design, plan, notes);
    }

    /** A step of the grid that suits a highest frequency and, with a digital path, divides its period. */
    static double step(Design design, double topHz, double perTop) {
        double coarse = 1 / (perTop * topHz);
        double fs = design.cancellation().map(c -> c.path().sampleRateHz()).orElse(0.0);
        return fs > 0 ? 1 / (fs * Math.ceil(1 / (fs * coarse))) : coarse;
    }

    /** Highest frequency of the band and of the profiles of some axes, Hz: up to there loss factors are fitted. */
    public static double topHz(Design design, List<Axis> axes) {
        double top = design.requirement().toHz();
        for (Axis a : axes) {
            double[] f = design.vibration().random().get(a.ordinal()).map(LogCurve::frequencies).orElse(new double[] {0});
            top = Math.max(top, f[f.length - 1]);
        }
        return top;
    }

    /**
     * Random vibration by the design's profile.
     *
     * @param axes   driven together; several only with {@code apply: together}
     * @param factor on the density
     */
    public static Result random(Design design, List<Axis> axes, double factor, long seed, Options options, PassMonitor monitor) {
        List<Optional<LogCurve>> density = new ArrayList<>();
        double top = topHz(design, axes);
        double lowest = design.requirement().fromHz();
        for (Axis a : Axis.ALL) {
            Optional<LogCurve> d = axes.contains(a) ? design.vibration().random().get(a.ordinal()).map(c -> c.scaled(factor))
                : Optional.empty();
            density.add(d);
            if (d.isPresent()) {
                double[] f = d.get().frequencies();
                lowest = Math.min(lowest, f[0]);
            }
        }
        double step = options.gridHz > 0 ? 1 / options.gridHz : step(design, top, PER_TOP);
        int factorOfTrace = PassRecorder.factor(step, top);
        int segment = segment(design, step * factorOfTrace);
        double one = segment * step * factorOfTrace;
        double duration = options.duration > 0 ? options.duration : one * (AVERAGES + 1) / 2;
        double settling = settling(design);
        VibrationRun ride = new VibrationRun(design, options, monitor, top, step, duration + settling);
        ride.notes.add(String.format(Locale.ROOT, "Gaussian noise by the profile, seed %d; the first %.3g s do not count.", seed,
            settling));
        NoiseDrive drive = new NoiseDrive(density, step, NoiseDrive.size(lowest, step), seed);
        String label = axes.size() > 1 ? "all" : axes.get(0).letter();
        return ride.run(drive, label, settling, duration, segment);
    }

    /** A segment long enough for the lowest frequency and for the narrowest mode. */
    private static int segment(Design design, double sample) {
        double resolution = design.requirement().fromHz() / 8;
        if (design.platform().isPresent()) {
            Assembly assembly = new Assembly(design.platform().get());
            DynamicStiffness d = new DynamicStiffness(assembly);
            for (int n = 0; n < 6; n++) {
                double width = 2 * d.dampingRatio(n) * assembly.modes().frequencyHz(n);
                resolution = Math.min(resolution, Math.max(width / 8, 0.25));
            }
        }
        int size = 256;
        while (size * sample < 1 / resolution) {
            size = twice(size);
        }
        return size;
    }

    /** Twice as many samples in a segment, as long as their spectra fit into memory. */
    private static int twice(int size) {
        if (size >= LARGEST_SEGMENT) {
            throw new ImpossibleRequestException(
                "the spectra would need segments of more than " + LARGEST_SEGMENT + " samples: lower --time-rate, "
                + "leave --full-rate out, or raise the lowest frequency of the requirement's band");
        }
        return 2 * size;
    }

    /** How long what was at the start takes to die away, s: seven time constants of the slowest mode, three of a high pass. */
    static double settling(Design design) {
        double time = 0.1;
        if (design.platform().isPresent()) {
            Assembly assembly = new Assembly(design.platform().get());
            DynamicStiffness d = new DynamicStiffness(assembly);
            for (int n = 0; n < 6; n++) {
                time = Math.max(time, 7 / (Math.max(1e-9, d.dampingRatio(n)) * assembly.modes().omega(n)));
            }
        }
        double high = design.cancellation().flatMap(c -> c.path().highPass()).map(p -> 3 / (2 * Math.PI * p.frequencyHz()))
            .orElse(0.0);
        return Math.min(LONGEST_SETTLING, Math.max(time, high));
    }

    /** A shock along one axis. */
    public static Result shock(Design design, Axis axis, Shock shock, Options options, PassMonitor monitor) {
        double top = Math.max(design.requirement().toHz(), 5 / shock.duration());
        double step = options.gridHz > 0 ? 1 / options.gridHz : shockStep(design, shock, step(design, top, PER_TOP));
        double after = design.platform().map(p -> 12 / new Assembly(p).modes().frequencyHz(0)).orElse(0.0);
        double duration = options.duration > 0 ? options.duration : shock.duration() + Math.max(0.1, Math.min(5, after));
        VibrationRun ride = new VibrationRun(design, options, monitor, design.requirement().toHz(), step, duration + LEAD);
        PulseDrive drive = new PulseDrive(new Pulse(shock), axis, step, Math.round(LEAD / step));
        return ride.run(drive, axis.letter(), 0, duration + LEAD, 0);
    }

    /** A step that divides every piece of the pulse too, as far as a grid that divides the sampling period can. */
    private static double shockStep(Design design, Shock shock, double coarse) {
        double piece = new Pulse(shock).pieces().get(0).duration();
        double fs = design.cancellation().map(c -> c.path().sampleRateHz()).orElse(0.0);
        double wanted = Math.min(coarse, piece / 64);
        if (fs <= 0) {
            return piece / Math.ceil(piece / wanted);
        }
        double best = Double.POSITIVE_INFINITY;
        double step = wanted;
        long first = (long) Math.ceil(1 / (fs * wanted) - 1e-9);
        for (long n = first; n < first + 16 && best > 1e-7; n++) {
            double steps = piece * fs * n;
            double off = Math.abs(steps - Math.rint(steps)) / steps;
            if (off < best * 0.99) {
                best = off;
                step = 1 / (fs * n);
            }
        }
        return step;
    }

    /** Recorded motion. */
    public static Result recorded(Design design, MotionRecord recording, Options options, PassMonitor monitor) {
        double rate = (recording.time().length - 1) / recording.duration();
        double top = Math.max(design.requirement().toHz(), Math.min(rate / 2.5, 10 * design.requirement().toHz()));
        double step = options.gridHz > 0 ? 1 / options.gridHz
            : Math.min(step(design, top, PER_TOP), step(design, rate, 1));
        double duration = options.duration > 0 ? Math.min(options.duration, recording.duration()) : recording.duration();
        VibrationRun ride = new VibrationRun(design, options, monitor, design.requirement().toHz(), step, duration);
        ride.notes.addAll(recording.notes());
        MotionRecordDrive drive = new MotionRecordDrive(recording, step);
        boolean[] used = drive.used();
        List<String> moved = Axis.ALL.stream().filter(a -> used[a.ordinal()]).map(Axis::letter).toList();
        int segment = segment(design, step * PassRecorder.factor(step, design.requirement().toHz()));
        while (segment > 256 && segment * step * PassRecorder.factor(step, design.requirement().toHz()) > duration / 4) {
            segment /= 2;
        }
        return ride.run(drive, moved.size() == 1 ? moved.get(0) : "all", 0, duration, segment);
    }

    private Result run(Drive drive, String axis, double skip, double duration, int segment) {
        long first = (long) Math.ceil(skip / step);
        long points = first + (long) Math.ceil(duration / step);
        int factor = options.fullRate ? 1 : PassRecorder.factor(step, topHz);
        PassRecorder recorder = new PassRecorder(engine.stacks(), new PassRecorder.Keep(step, first, factor, topHz,
            options.rows, options.fullRate ? largerSegment(segment) : segment));
        long start = System.nanoTime();
        long[] done = new long[1];
        engine.run(drive, points, frame -> {
            recorder.accept(frame);
            done[0] = frame.first() + frame.n();
            return monitor.progress((double) done[0] / points);
        });
        recorder.finish();
        double elapsed = Math.max(1e-9, (System.nanoTime() - start) * 1e-9);
        return new Result(axis, done[0] * step, elapsed, 1 / step, engine.stacks(), recorder.peak(), recorder.rms(),
            PassEvents.travel(engine), engine.platform().map(p -> p.travel().centre()).orElse(Vec.ZERO),
            PassEvents.contacts(engine), PassEvents.clipped(engine), recorder.trace(), Optional.ofNullable(recorder.welch()),
            List.copyOf(notes), done[0] < points);
    }

    private int largerSegment(int segment) {
        int size = segment;
        int times = PassRecorder.factor(step, topHz);
        while (times > 1) {
            size = twice(size);
            times /= 2;
        }
        return size;
    }
}
