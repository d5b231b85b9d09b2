package quietband.identification.shaker;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Resonance;
import quietband.model.Stack;
import quietband.oscillator.Sidebands;
import quietband.platform.Assembly;
import quietband.platform.DynamicStiffness;
import quietband.response.ResidualResponse;
import quietband.response.limits.DwellLimits;
import quietband.spectrum.LogGrid;
import quietband.units.StandardGravity;

/**
 * How to measure a design on the shaker: dwells that never use more than half of its travel, preload or ranges.
 *
 * @param steps      in the order in which they are run
 * @param resonances of platform and supports within the band, rising, Hz: where amplification is to be expected
 */
public record TestPlan(List<Step> steps, List<Double> resonances) {

    /** Level where nothing limits it, g peak. */
    public static final double LEVEL_G = 1;
    /** Stroke of a common shaker, m peak. */
    public static final double STROKE = 5e-3;

    private static final int FREQUENCIES = 16;
    /** Share of travel, preload and ranges that a dwell may use. */
    public static final double SHARE = 0.5;
    /** The first run of each dwell is so much lower: 12 dB. */
    public static final double START = 0.25;
    private static final double LARGEST_INDEX = 0.3;
    private static final double SHORTEST = 5;
    private static final double CYCLES = 200;
    private static final double DECAYS = 10;

    public TestPlan {
        steps = List.copyOf(steps);
        resonances = List.copyOf(resonances);
    }

    /**
     * One dwell.
     *
     * @param axis         shaken along this axis of the housing
     * @param frequencyHz  of the shaker
     * @param startG       peak to begin with, g
     * @param peakG        peak, g
     * @param seconds      to hold it before and while reading
     * @param withoutDbc   sideband to expect without cancellation, at the frequency read
     * @param withDbc      the same with the cancellation on; NaN without one
     * @param limitedBy    what keeps the level down; empty when the asked level is reached
     */
    public record Step(Axis axis, double frequencyHz, double startG, double peakG, double seconds, double withoutDbc, double withDbc,
                       String limitedBy) { }

    /**
     * Makes a plan.
     *
     * @param topG   level asked for, g peak
     * @param stroke of the shaker, m peak
     * @param readHz frequency at which sidebands are read, Hz
     */
    public static TestPlan of(Design design, double topG, double stroke, double readHz) {
        List<Double> resonances = resonances(design);
        DwellLimits limits = new DwellLimits(design);
        ResidualResponse response = new ResidualResponse(design);
        double slowest = slowestDecay(design);
        List<Step> steps = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            for (double f : frequencies(design, resonances)) {
                steps.add(step(design, limits, response, axis, f, new Asked(topG, stroke, readHz, slowest)));
            }
        }
        return new TestPlan(steps, resonances);
    }

    private record Asked(double topG, double stroke, double readHz, double decay) { }

    private static Step step(Design design, DwellLimits limits, ResidualResponse response, Axis axis, double f, Asked asked) {
        double without = response.magnitude(Stack.fullest(design).sprung() ? Stack.ISOLATED : Stack.BARE, axis, f);
        double with = Stack.fullest(design).corrected() ? response.magnitude(Stack.fullest(design), axis, f) : Double.NaN;
        DwellLimits.Limit limit = limits.at(f, axis);
        double w = 2 * Math.PI * f;
        double shaker = asked.stroke() * w * w / StandardGravity.M_PER_S2;
        double largest = LARGEST_INDEX * f / (asked.readHz() * Math.max(without, 1e-30));
        String cause = "";
        double level = asked.topG();
        double[] others = {SHARE * limit.least(), shaker, largest};
        String[] names = {limit.cause(), "shaker stroke", "modulation index"};
        for (int k = 0; k < others.length; k++) {
            if (others[k] < level) {
                level = others[k];
                cause = names[k];
            }
        }
        level = down(level);
        double seconds = Math.ceil(Math.max(Math.max(SHORTEST, CYCLES / f), DECAYS * asked.decay()));
        return new Step(axis, f, START * level, level, seconds, dbc(without, level, asked.readHz(), f),
            dbc(with, level, asked.readHz(), f), cause);
    }

    /** Two digits, never up. */
    private static double down(double level) {
        double unit = StrictMath.pow(10, Math.floor(StrictMath.log10(level)) - 1);
        return Math.floor(level / unit * (1 + 1e-12)) * unit;
    }

    private static double dbc(double perG, double peakG, double readHz, double f) {
        return Double.isNaN(perG) ? Double.NaN : Sidebands.levelDbc(Sidebands.index(perG, peakG, readHz, f));
    }

    /** Modes of the platform and supports of the blank within the band, rising, Hz. */
    public static List<Double> resonances(Design design) {
        TreeSet<Double> all = new TreeSet<>();
        design.platform().map(Assembly::new).ifPresent(a -> {
            for (int n = 0; n < 6; n++) {
                all.add(a.modes().frequencyHz(n));
            }
        });
        Resonance r = design.oscillator().resonator().supportResonance();
        for (int i = 0; i < 3; i++) {
            if (r.on(i)) {
                all.add(r.frequencyHz().get(i));
            }
        }
        return all.stream().filter(f -> f >= design.requirement().fromHz() && f <= design.requirement().toHz()).toList();
    }

    /** Spread over the band on a logarithmic scale, and each resonance with its neighbourhood; nothing twice. */
    private static List<Double> frequencies(Design design, List<Double> resonances) {
        TreeSet<Double> wanted = new TreeSet<>();
        double from = design.requirement().fromHz();
        double to = design.requirement().toHz();
        for (double f : LogGrid.between(FREQUENCIES, from, to)) {
            wanted.add(rounded(f, from, to));
        }
        for (double f : resonances) {
            for (double factor : new double[] {0.9, 1, 1.1}) {
                double near = rounded(f * factor, from, to);
                boolean free = wanted.stream().noneMatch(x -> Math.abs(x / near - 1) < 0.02);
                if (free) {
                    wanted.add(near);
                }
            }
        }
        return List.copyOf(wanted);
    }

    private static double rounded(double f, double from, double to) {
        double unit = StrictMath.pow(10, Math.floor(StrictMath.log10(f)) - 2);
        return Math.max(from, Math.min(to, Math.rint(f / unit) * unit));
    }

    /** Time constant of the slowest decay, s: 1/(z w) of a platform mode with at least 0.5 % taken, Q/(pi f) of a support. */
    private static double slowestDecay(Design design) {
        double slowest = 0;
        if (design.platform().isPresent()) {
            Assembly a = new Assembly(design.platform().get());
            DynamicStiffness stiffness = new DynamicStiffness(a);
            for (int n = 0; n < 6; n++) {
                slowest = Math.max(slowest, 1 / (Math.max(0.005, stiffness.dampingRatio(n)) * 2 * Math.PI * a.modes().frequencyHz(n)));
            }
        }
        Resonance r = design.oscillator().resonator().supportResonance();
        for (int i = 0; i < 3; i++) {
            slowest = r.on(i) ? Math.max(slowest, r.q().get(i) / (Math.PI * r.frequencyHz().get(i))) : slowest;
        }
        return slowest;
    }
}
