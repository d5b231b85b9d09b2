package quietband.cli.option;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;
import quietband.cli.terminal.InputErrorException;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Vibration;
import quietband.units.Dimension;

/** What moves the housing in a simulation; what is left out comes from the model's vibration block. */
public final class DriveOptions {

    /** Kinds of drive. */
    public enum Kind { SWEEP, DWELL, RANDOM, SHOCK, RECORD }

    @Option(names = "--drive", required = true, paramLabel = "sweep|dwell|random|shock|record",
        description = "what moves the housing")
    private Kind kind;

    @Option(names = "--axis", paramLabel = "x|y|z", description = "only this axis; default: the model's axes, one after another")
    private Axis axis;

    @Option(names = "--frequency", paramLabel = "FREQ", description = "of a dwell, e.g. \"88 Hz\"; default: the first tone's")
    private String frequency;

    @Option(names = "--peak", paramLabel = "ACCEL",
        description = "peak acceleration of a sweep, dwell or shock, e.g. \"1 g\"; default: the model's, else 1 g")
    private String peak;

    @Option(names = "--scale", paramLabel = "DB", description = "level of a random drive over the profile, e.g. \"-6 dB\"")
    private String scale;

    @Option(names = "--duration", paramLabel = "TIME", description = "how long the part that counts lasts, e.g. \"2 s\"")
    private String duration;

    @Option(names = "--rate", paramLabel = "N",
        description = "octaves a minute of a sweep, up and down; default: each frequency as long as its measurement takes")
    private Double rate;

    @Option(names = "--record", paramLabel = "FILE.csv", description = "recorded motion: time_s,x_g,y_g,z_g, any of the axes")
    private Path record;

    @Option(names = "--linear", description = "without clipping, quantising, slack, stops and curvature")
    private boolean linear;

    @Option(names = "--full-rate", description = "motion.csv at the rate of the time grid")
    private boolean fullRate;

    @Option(names = "--time-rate", paramLabel = "FREQ",
        description = "rate of the time grid for random, shock and record, e.g. \"100 kHz\"; default: what the drive needs")
    private String timeRate;

    public Kind kind() {
        return kind;
    }

    public boolean linear() {
        return linear;
    }

    public boolean fullRate() {
        return fullRate;
    }

    /** Seconds wanted; 0 when left to the drive. */
    public double duration() {
        return duration == null ? 0 : OptionAmount.positive("--duration", duration, Dimension.TIME, 1e6, "1e6 s");
    }

    /** Rate of the time grid, Hz; 0 when left to the drive. */
    public double gridHz() {
        return timeRate == null ? 0 : OptionAmount.positive("--time-rate", timeRate, Dimension.FREQUENCY, 1e8, "100 MHz");
    }

    /** Octaves a minute; infinite when left out. */
    public double rate() {
        if (rate != null && !(rate > 0 && Double.isFinite(rate))) {
            throw new InputErrorException("--rate " + rate + ": octaves a minute above 0");
        }
        return rate == null ? Double.POSITIVE_INFINITY : rate;
    }

    /** Factor on a density. */
    public double densityFactor() {
        return scale == null ? 1 : Math.pow(10, OptionAmount.read("--scale", scale, Dimension.DECIBEL) / 10);
    }

    /** The axes to drive, one after another. */
    public List<Axis> axes(Design design, boolean judged) {
        if (axis != null) {
            return List.of(axis);
        }
        return judged ? Axis.ALL : Axis.ALL.stream().filter(design.vibration().axes()::contains).toList();
    }

    /** Whether an axis was named. */
    public boolean oneAxis() {
        return axis != null;
    }

    private static Optional<Vibration.Tone> tone(Design design) {
        return design.vibration().tones().stream().findFirst();
    }

    /** Axis of a dwell. */
    public Axis dwellAxis(Design design) {
        return axis != null ? axis : tone(design).flatMap(Vibration.Tone::axis)
            .orElseGet(() -> Axis.ALL.stream().filter(design.vibration().axes()::contains).findFirst().orElse(Axis.X));
    }

    /** Frequency of a dwell, Hz. */
    public double dwellFrequency(Design design) {
        if (frequency != null) {
            return OptionAmount.positive("--frequency", frequency, Dimension.FREQUENCY, 1e7, "10 MHz");
        }
        return tone(design).map(Vibration.Tone::frequencyHz).orElseThrow(() -> new InputErrorException(
            "a dwell needs --frequency, e.g. --frequency \"88 Hz\": the model has no vibration.tones"));
    }

    /** Peak of a dwell or sweep, g. */
    public double peakG(Design design) {
        return peak != null ? OptionAmount.positive("--peak", peak, Dimension.ACCELERATION, 1e9, "1e9 g")
            : tone(design).map(Vibration.Tone::peakG).filter(p -> p > 0).orElse(1.0);
    }

    /** The shock of the model, with the peak wanted. */
    public Vibration.Shock shock(Design design) {
        Vibration.Shock s = design.vibration().shock().orElseThrow(() -> new InputErrorException(
            "the model has no vibration.shock: add one, e.g. shock: {shape: half-sine, peak: 15 g, duration: 11 ms}"));
        return peak == null ? s : new Vibration.Shock(s.shape(),
            OptionAmount.positive("--peak", peak, Dimension.ACCELERATION, 1e9, "1e9 g"), s.duration());
    }

    /** The record's file. */
    public Path record() {
        if (record == null) {
            throw new InputErrorException("--drive record needs --record FILE.csv with columns time_s and any of x_g, y_g, z_g");
        }
        return record;
    }

    /** Refuses options that the drive has no use for. */
    public void check() {
        refuse(frequency != null && kind != Kind.DWELL, "--frequency", "a dwell");
        refuse(scale != null && kind != Kind.RANDOM, "--scale", "random vibration");
        refuse(rate != null && kind != Kind.SWEEP, "--rate", "a sweep");
        refuse(record != null && kind != Kind.RECORD, "--record", "--drive record");
        refuse(axis != null && kind == Kind.RECORD, "--axis", "the other drives: a record's columns say what moves");
        refuse(peak != null && (kind == Kind.RANDOM || kind == Kind.RECORD), "--peak", "sweep, dwell and shock");
    }

    private static void refuse(boolean when, String option, String serves) {
        if (when) {
            throw new InputErrorException(option + " serves " + serves + " only; leave it out");
        }
    }
}
