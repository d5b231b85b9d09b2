package quietband.tuning.trade;

import java.util.List;
import java.util.Map;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.model.Vibration.Tone;
import quietband.oscillator.Sidebands;
import quietband.platform.Assembly;
import quietband.platform.BodyExtent;
import quietband.platform.DynamicStiffness;
import quietband.platform.Modes;
import quietband.platform.PlatformMotion;
import quietband.platform.PointMotion;
import quietband.response.ResidualResponse;
import quietband.response.travel.Travel;
import quietband.spectrum.LogCurve;
import quietband.units.StandardGravity;
import quietband.vibration.Pulse;

/** Travel, swing of sensors and port, and tones of one design, summed up while a pass goes over the frequencies. */
final class QuickMotion {

    private static final int PAIRS = 21;
    private static final double ONE_MODE = 1.003;

    private final Design design;
    private final Assembly assembly;
    private final ResidualResponse response;
    private final boolean sprung;
    private final boolean travel;
    private final double[][] ends = new double[3][];
    private final double[] pairs = new double[3 * PAIRS];
    private final double[] swing = new double[12];
    private final double[] sRe = new double[9];
    private final double[] sIm = new double[9];
    private final double[] cRe = new double[3];
    private final double[] cIm = new double[3];

    QuickMotion(Design design, Assembly assembly, ResidualResponse response) {
        this.design = design;
        this.assembly = assembly;
        this.response = response;
        this.sprung = Stack.fullest(design).sprung();
        this.travel = design.platform().flatMap(Platform::clearance).isPresent();
        for (Axis axis : Axis.ALL) {
            double[] f = design.vibration().drive(axis).map(LogCurve::frequencies).orElse(new double[0]);
            ends[axis.ordinal()] = f.length == 0 ? null : new double[] {f[0], f[f.length - 1]};
        }
    }

    /** Width of a node in a trapezoidal sum over log f between two ends that are nodes, Hz; 0 outside. */
    static double weight(double[] f, int i, double from, double to) {
        if (f[i] < from || f[i] > to) {
            return 0;
        }
        double low = i > 0 && f[i - 1] >= from ? StrictMath.log(f[i] / f[i - 1]) : 0;
        double high = i < f.length - 1 && f[i + 1] <= to ? StrictMath.log(f[i + 1] / f[i]) : 0;
        return f[i] * (low + high) / 2;
    }

    /** Adds the node the response stands at; {@code density} of each axis there, g^2/Hz. */
    void add(double[] f, int i, double[] density) {
        boolean swings = design.cancellation().isPresent();
        if (swings) {
            response.sensed(sprung, sRe, sIm);
            response.correction(sprung, cRe, cIm);
        }
        double g2 = StandardGravity.M_PER_S2 * StandardGravity.M_PER_S2;
        PlatformMotion m = response.motion();
        for (int j = 0; j < 3; j++) {
            double drive = ends[j] == null ? 0 : weight(f, i, ends[j][0], ends[j][1]) * density[j];
            if (drive == 0) {
                continue;
            }
            if (travel && m != null) {
                int at = j * PAIRS;
                for (int a = 0; a < 6; a++) {
                    for (int b = 0; b <= a; b++) {
                        pairs[at++] += drive * g2 * (m.relativeRe(a, j) * m.relativeRe(b, j) + m.relativeIm(a,
                            j) * m.relativeIm(b, j));
                    }
                }
            }
            if (swings) {
                for (int row = 0; row < 4; row++) {
                    swing[3 * row + j] += drive * power(row, j);
                }
            }
        }
    }

    private double power(int row, int j) {
        double re = row < 3 ? sRe[3 * row + j] : cRe[j];
        double im = row < 3 ? sIm[3 * row + j] : cIm[j];
        return re * re + im * im;
    }

    /** Puts in what is over or under its limit, dB. */
    void limits(Map<QuickVerdict.Limit, Double> over) {
        double[] tones = new double[12];
        double worst = Double.NEGATIVE_INFINITY;
        double[] re = new double[3];
        double[] im = new double[3];
        for (Tone tone : design.vibration().tones()) {
            response.at(tone.frequencyHz());
            response.residual(Stack.fullest(design), re, im);
            design.cancellation().ifPresent(c -> {
                response.sensed(sprung, sRe, sIm);
                response.correction(sprung, cRe, cIm);
            });
            for (Axis axis : tone.axis().map(List::of).orElse(Axis.ALL)) {
                int j = axis.ordinal();
                double y = Math.hypot(re[j], im[j]);
                double level = Sidebands.levelDbc(Sidebands.index(y, tone.peakG(), design.oscillator().outputHz(),
                    tone.frequencyHz()));
                worst = Math.max(worst, level - design.requirement().tones().map(l -> l.at(tone.frequencyHz()))
                    .orElse(Double.NaN));
                for (int row = 0; row < 4; row++) {
                    tones[3 * row + j] += Math.sqrt(power(row, j)) * tone.peakG();
                }
            }
        }
        if (design.requirement().tones().isPresent() && !design.vibration().tones().isEmpty()) {
            over.put(QuickVerdict.Limit.TONES, worst);
        }
        design.cancellation().ifPresent(c -> ranges(c, tones, over));
        if (travel && assembly != null) {
            over.put(QuickVerdict.Limit.TRAVEL, decibels(travelShare()));
        }
    }

    private static double decibels(double share) {
        return share > 0 ? Math.max(-300, 20 * StrictMath.log10(share)) : -300;
    }

    private void ranges(Cancellation c, double[] tones, Map<QuickVerdict.Limit, Double> over) {
        double[] most = new double[4];
        for (int row = 0; row < 4; row++) {
            double sum = 0;
            double peaks = 0;
            for (int j = 0; j < 3; j++) {
                most[row] = Math.max(most[row], 3 * Math.sqrt(swing[3 * row + j]) + tones[3 * row + j]);
                sum += swing[3 * row + j];
                peaks += tones[3 * row + j];
            }
            most[row] = design.vibration().together() ? 3 * Math.sqrt(sum) + peaks : most[row];
        }
        double share = 0;
        for (int i = 0; i < 3; i++) {
            share = Math.max(share, most[i] / c.sensor().rangeG().get(i));
        }
        if (share > 0) {
            over.put(QuickVerdict.Limit.SENSOR_RANGE, decibels(share));
        }
        double slope = Math.abs(c.tuning().slopePerV());
        if (slope > 0 && Double.isFinite(c.tuning().rangeV())) {
            over.put(QuickVerdict.Limit.TUNING_SWING, decibels(most[3] / slope / c.tuning().rangeV()));
        }
    }

    private double travelShare() {
        Platform p = design.platform().orElseThrow();
        Vec clear = p.clearance().orElseThrow();
        Vec steady = Travel.sustained(design, assembly);
        Vec random = random(p);
        Shocked shock = shocked(p);
        double bound = share(steady, shock.sum(), random, clear);
        // the exact shock costs more than all the rest: only where several modes move a point and their sum is too much
        return bound <= 1 || bound < share(steady, shock.largest(), random, clear) * ONE_MODE ? bound
            : share(steady, Travel.firstSwing(design, assembly), random, clear);
    }

    private static double share(Vec steady, Vec shock, Vec random, Vec clear) {
        double most = 0;
        for (Axis a : Axis.ALL) {
            double counted = steady.get(a) + Math.max(shock.get(a), random.get(a));
            most = Math.max(most, counted == 0 ? 0 : counted / clear.get(a));
        }
        return most;
    }

    private Vec random(Platform p) {
        double[] most = new double[3];
        for (Vec point : BodyExtent.points(p)) {
            double[] b = PointMotion.of(assembly.fromCentre(point));
            for (int i = 0; i < 3; i++) {
                double all = 0;
                double largest = 0;
                for (int j = 0; j < 3; j++) {
                    double sum = square(b, 6 * i, j * PAIRS);
                    all += sum;
                    largest = Math.max(largest, sum);
                }
                most[i] = Math.max(most[i], 3 * Math.sqrt(Math.max(0, design.vibration().together() ? all : largest)));
            }
        }
        return Vec.of(most);
    }

    private double square(double[] b, int from, int at) {
        double sum = 0;
        int e = at;
        for (int a = 0; a < 6; a++) {
            for (int c = 0; c <= a; c++) {
                sum += (a == c ? 1 : 2) * b[from + a] * b[from + c] * pairs[e++];
            }
        }
        return sum;
    }

    /**
     * Travel under a shock from its modes, m.
     *
     * @param sum     of what each can move: more than the travel, as they do not peak together
     * @param largest of them
     */
    private record Shocked(Vec sum, Vec largest) { }

    private Shocked shocked(Platform p) {
        if (design.vibration().shock().isEmpty()) {
            return new Shocked(Vec.ZERO, Vec.ZERO);
        }
        Pulse pulse = new Pulse(design.vibration().shock().get());
        DynamicStiffness stiffness = new DynamicStiffness(assembly);
        Modes modes = assembly.modes();
        double[] peak = new double[6];
        for (int n = 0; n < 6; n++) {
            peak[n] = SwingPeak.of(pulse, modes.omega(n), stiffness.dampingRatio(n));
        }
        double[] most = new double[3];
        double[] largest = new double[3];
        for (Vec point : BodyExtent.points(p)) {
            double[] b = PointMotion.of(assembly.fromCentre(point));
            for (Axis drive : design.vibration().axes()) {
                for (int i = 0; i < 3; i++) {
                    double sum = 0;
                    for (int n = 0; n < 6; n++) {
                        double[] phi = modes.shape(n);
                        double u = 0;
                        for (int c = 0; c < 6; c++) {
                            u += b[6 * i + c] * phi[c];
                        }
                        double moved = Math.abs(u * phi[drive.ordinal()] * p.mass()) * peak[n];
                        largest[i] = Math.max(largest[i], moved);
                        sum += moved;
                    }
                    most[i] = Math.max(most[i], sum);
                }
            }
        }
        return new Shocked(Vec.of(most), Vec.of(largest));
    }
}
