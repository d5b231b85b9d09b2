package quietband.identification.shaker;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.stat.StatUtils;
import org.hipparchus.stat.descriptive.moment.Mean;
import quietband.identification.shaker.ShakerPoint.Mark;
import quietband.model.Axis;
import quietband.oscillator.Sidebands;

/** Works out one axis of one resonator: levels to sensitivities, marks, the fit of the support, mean, sign, uncertainty. */
final class AxisReduction {

    private static final double SURE_SIGN = 0.5;
    /** A Q known worse than to this share is not told. */
    private static final double TOLD_Q = 0.7;
    private static final double HIGHEST_Q = 1e4;
    private static final double NORMAL_95 = 1.959963984540054;

    private final Axis axis;
    private final ShakerRules rules;
    private final List<ShakerReading> sidebands;
    private final TipOver turnOver;
    private final List<String> notes = new ArrayList<>();
    private final double[] index;
    private final double[] raw;
    private final Mark[] mark;
    private double[] modes = new double[0];

    AxisReduction(Axis axis, List<ShakerReading> readings, ShakerRules rules) {
        this.axis = axis;
        this.rules = rules;
        this.sidebands = readings.stream().filter(r -> !r.turnOver()).toList();
        List<ShakerReading> turned = readings.stream().filter(ShakerReading::turnOver).toList();
        this.turnOver = TipOver.of(turned, rules.readHz());
        if (!turned.isEmpty() && turnOver == null) {
            notes.add("2 g tip-over readings need both senses, up and down");
        }
        int n = sidebands.size();
        index = new double[n];
        raw = new double[n];
        mark = new Mark[n];
        for (int i = 0; i < n; i++) {
            convert(i);
        }
        markHidden();
    }

    /** Beyond the null a level falls again and looks small: what the other readings say of the index decides. */
    private void markHidden() {
        double[] sure = IntStream.range(0, raw.length).filter(i -> mark[i] == Mark.USED).mapToDouble(i -> raw[i]).sorted().toArray();
        for (int i = 0; i < raw.length && sure.length > 0; i++) {
            ShakerReading r = sidebands.get(i);
            double expected = sure[sure.length / 2] * r.peakG() * rules.readHz() / r.frequencyHz();
            if (mark[i] == Mark.USED && expected > ShakerAnalysis.CARRIER_LOST) {
                mark[i] = Mark.CARRIER_NULL;
            }
        }
    }

    /** |G| = index f/(f0 a), the floor's power taken off, and whether the reading can be trusted. */
    private void convert(int i) {
        ShakerReading r = sidebands.get(i);
        double floor = Double.isNaN(r.floorDbc()) ? rules.floorDbc() : r.floorDbc();
        index[i] = Sidebands.indexOf(r.sidebandDbc());
        double above = Double.isNaN(floor) ? Double.POSITIVE_INFINITY : r.sidebandDbc() - floor;
        double kept = above > 0 ? Math.sqrt(1 - StrictMath.pow(10, -above / 10)) : 0;
        raw[i] = index[i] * kept * r.frequencyHz() / (rules.readHz() * r.peakG());
        mark[i] = above < rules.floorMarginDb() ? Mark.NOISE_FLOOR : index[i] > ShakerAnalysis.CARRIER_LOST ? Mark.CARRIER_NULL
            : Mark.USED;
    }

    /** What the modes make of the acceleration at a frequency: real and imaginary part. */
    double[] shape(double f) {
        return ModeFit.response(modes, f);
    }

    /**
     * The axis, the others known from the round before.
     *
     * @param before results of the round before; empty in the first
     * @param all    every axis' reduction, for the shape of its support
     */
    AxisSensitivity reduced(Map<Axis, AxisSensitivity> before, Map<Axis, AxisReduction> all) {
        List<String> said = new ArrayList<>(notes);
        double[] y = raw.clone();
        double left = before.isEmpty() ? 0 : correct(y, before, all, said);
        int[] used = IntStream.range(0, y.length).filter(i -> mark[i] == Mark.USED && y[i] > 0).toArray();
        tellMarks(said);
        if (used.length == 0) {
            return withoutSidebands(y, said);
        }
        double[] f = pick(used, i -> sidebands.get(i).frequencyHz());
        double[] target = pick(used, i -> StrictMath.log(y[i]));
        boolean stated = Arrays.stream(used).noneMatch(i -> Double.isNaN(sidebands.get(i).sigmaDb()));
        double toNeper = StrictMath.log(10) / 20;
        double[] weight = pick(used, i -> stated ? 1 / (sidebands.get(i).sigmaDb() * sidebands.get(i).sigmaDb() * toNeper * toNeper) : 1);
        ModeFit fit = ModeSearch.run(f, target, weight);
        modes = ModeFit.modes(fit.parameters());
        double[] over = pick(used, i -> y[i] / StrictMath.exp(ModeFit.logShape(modes, sidebands.get(i).frequencyHz())));
        double mean = new Mean().evaluate(over, weight);
        double spread = over.length < 2 ? Double.NaN : Math.sqrt(StatUtils.variance(over, mean));
        int spare = used.length - fit.free();
        double scatter = spare > 0 ? fit.ssr() / spare : Double.NaN;
        double variance = fit.variances()[0] * (stated ? Math.max(1, Double.isNaN(scatter) ? 1 : scatter) : scatter);
        double t = stated && !(scatter > 1) || spare <= 0 ? NORMAL_95 : new TDistribution(spare).inverseCumulativeProbability(0.975);
        double common = rules.calibration() * rules.calibration() + left * left / (mean * mean);
        double sigma = mean * Math.sqrt(variance + common);
        double half = mean * Math.sqrt(variance * t * t + common * NORMAL_95 * NORMAL_95);
        int sign = sign(used, said);
        return new AxisSensitivity(axis, points(y, StrictMath.exp(fit.parameters()[0])), turnOver, sign == 0 ? mean : sign * mean,
            sign != 0, sigma, half, spread, found(fit, f, scatter, stated), fit.parameters().clone(), said);
    }

    private static double[] pick(int[] used, IntToDoubleFunction value) {
        return Arrays.stream(used).mapToDouble(value).toArray();
    }

    private void tellMarks(List<String> said) {
        for (Mark m : new Mark[] {Mark.NOISE_FLOOR, Mark.CARRIER_NULL}) {
            long n = Arrays.stream(mark).filter(x -> x == m).count();
            if (n > 0) {
                said.add(m == Mark.NOISE_FLOOR
                    ? String.format(Locale.ROOT, "%d of %d readings are less than %.1f dB above the noise floor and do not count",
                        n, mark.length, rules.floorMarginDb())
                    : String.format(Locale.ROOT, "%d of %d readings have a sideband above the carrier, near its null, and do not "
                        + "count: lower the level", n, mark.length));
            }
        }
    }

    private AxisSensitivity withoutSidebands(double[] y, List<String> said) {
        modes = new double[0];
        boolean turned = turnOver != null;
        return new AxisSensitivity(axis, points(y, Double.NaN), turnOver, turned ? turnOver.perG() : Double.NaN, turned,
            turned ? turnOver.sigmaPerG() : Double.NaN, turned ? turnOver.halfPerG() : Double.NaN, Double.NaN, List.of(),
            new double[0], said);
    }

    private List<ShakerPoint> points(double[] y, double scale) {
        List<ShakerPoint> points = new ArrayList<>();
        for (int i = 0; i < y.length; i++) {
            double fitted = scale * StrictMath.exp(ModeFit.logShape(modes, sidebands.get(i).frequencyHz()));
            points.add(new ShakerPoint(sidebands.get(i), index[i], y[i], fitted, mark[i]));
        }
        return points;
    }

    /** +1, -1 or 0 for unknown: by the phase against the support's own, else by tip-over. */
    private int sign(int[] used, List<String> said) {
        double sum = 0;
        int n = 0;
        for (int i : used) {
            double phase = sidebands.get(i).phase();
            if (!Double.isNaN(phase)) {
                double[] h = shape(sidebands.get(i).frequencyHz());
                sum += StrictMath.cos(phase - StrictMath.atan2(h[1], h[0]));
                n++;
            }
        }
        if (n > 0 && Math.abs(sum) >= SURE_SIGN * n) {
            return sum > 0 ? 1 : -1;
        }
        if (n > 0) {
            said.add("phases do not agree on a sign");
        }
        return turnOver == null ? 0 : (int) Math.signum(turnOver.perG());
    }

    private static List<AxisSensitivity.Found> found(ModeFit fit, double[] f, double scatter, boolean stated) {
        double top = Arrays.stream(f).max().orElse(0);
        double[] variances = fit.variances();
        double unit = stated ? Math.max(1, scatter) : scatter;
        double[] p = fit.parameters();
        List<AxisSensitivity.Found> found = new ArrayList<>();
        for (int k = 1; k + 2 < p.length; k += 3) {
            double hz = StrictMath.exp(p[k]);
            boolean told = hz <= top && Math.sqrt(variances[k + 1] * unit) < TOLD_Q && StrictMath.exp(p[k + 1]) < HIGHEST_Q;
            found.add(new AxisSensitivity.Found(hz, hz * Math.sqrt(variances[k] * unit), told ? StrictMath.exp(p[k + 1]) : Double.NaN,
                p[k + 2], hz > top));
        }
        found.sort(Comparator.comparingDouble(AxisSensitivity.Found::frequencyHz));
        return found;
    }

    /**
     * Takes out what motion along the other axes did: |z - sum_k G_k H_k r_k|, z the reading with its phase, or with the sign and
     * the support's phase where none was read.
     *
     * @param y modified
     * @return what could not be corrected for, as a standard uncertainty in 1/g
     */
    private double correct(double[] y, Map<Axis, AxisSensitivity> before, Map<Axis, AxisReduction> all, List<String> said) {
        double open = 0;
        int without = 0;
        AxisSensitivity own = before.get(axis);
        for (int i = 0; i < y.length; i++) {
            ShakerReading r = sidebands.get(i);
            double re = 0;
            double im = 0;
            double unsigned = 0;
            for (Axis other : Axis.ALL) {
                AxisSensitivity g = other == axis ? null : before.get(other);
                double share = r.cross()[other.ordinal()];
                if (g == null || !g.usable() || share == 0) {
                    continue;
                }
                double[] h = all.get(other).shape(r.frequencyHz());
                re += g.meanPerG() * share * h[0];
                im += g.meanPerG() * share * h[1];
                unsigned += g.signKnown() ? 0 : Math.abs(g.meanPerG() * share);
            }
            boolean phase = !Double.isNaN(r.phase());
            if (re == 0 && im == 0) {
                continue;
            }
            if (unsigned > 0 || !phase && !own.signKnown()) {
                without++;
                open = Math.max(open, StrictMath.hypot(re, im));
                continue;
            }
            double[] h = shape(r.frequencyHz());
            double angle = phase ? r.phase() : StrictMath.atan2(h[1], h[0]) + (own.meanPerG() < 0 ? Math.PI : 0);
            y[i] = StrictMath.hypot(y[i] * StrictMath.cos(angle) - re, y[i] * StrictMath.sin(angle) - im);
        }
        if (without > 0) {
            said.add("cross-axis motion of " + without + " readings is not taken out, signs are unknown (column phase_deg, or tip-over): "
                + "it is counted as uncertainty");
        }
        return open / Math.sqrt(3);
    }
}
