package quietband.tuning.springs;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongConsumer;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.numerics.ImpossibleRequestException;
import quietband.platform.Assembly;
import quietband.platform.AxisFrequencies;
import quietband.platform.BodyExtent;
import quietband.platform.ElasticCentre;
import quietband.response.travel.Travel;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;
import quietband.tuning.parts.Elastomer;
import quietband.tuning.parts.PlatformNumbers;
import quietband.tuning.parts.SpringPart;
import quietband.tuning.parts.SpringParts;
import quietband.tuning.parts.SpringRequest;
import quietband.tuning.parts.TargetCheck;

/**
 * From a target to a changed model: centres brought together, rates and damping found, parts chosen, ballast added, all
 * checked.
 */
public final class SpringPlanner {

    private static final int MOST_LOWERED = 8;
    private static final double SPARE_DB = 0.05;
    // a viscous platform lets through in proportion to its natural frequency, a lossy one to its square
    private static final double SLOPE_DB = 25;

    private final ModelFile file;
    private final SpringRequest wish;
    private final Design base;
    private final List<TargetCheck> findings = new ArrayList<>();

    private final int threads;

    private final LongConsumer told;

    private SpringPlanner(ModelFile file, SpringRequest wish, int threads, LongConsumer told) {
        this.told = told;
        this.threads = threads;
        this.file = file;
        this.wish = wish;
        this.base = file.design();
    }

    /**
     * Works a target out.
     *
     * @param threads that share a search; change no figure
     * @param told    how many designs a search has judged; called from several threads
     * @throws ImpossibleRequestException when it cannot be worked on at all
     */
    public static SpringAnswer plan(ModelFile file, SpringRequest wish, int threads, LongConsumer told) {
        return new SpringPlanner(file, wish, threads, told).plan();
    }

    private SpringAnswer plan() {
        Platform platform = base.platform().orElseThrow(() -> new ImpossibleRequestException(
            "the model has no platform: there is no mass to put "
            + "on springs; add a block 'platform' with mass, size and springs"));
        fits(platform);
        Assessment before = Assessor.assess(base);
        PlatformNumbers numbers = new PlatformNumbers(base);
        Vec shift = wish.centre() ? ElasticCentring.meet(numbers) : Vec.ZERO;
        SpringTarget target = SpringTarget.of(numbers.design(), wish, threads, told);
        Chosen chosen = choose(target);
        for (int i = 0; i < MOST_LOWERED && wish.reduction().isPresent(); i++) {
            // other damping than the model's, and rounding, take something of what was worked out with the model's own
            double missing = wish.reduction().get().decibels() - reached(wish.reduction().get(), chosen.design());
            if (missing <= 0) {
                break;
            }
            target = target.lower(StrictMath.pow(10, -(missing + SPARE_DB) / SLOPE_DB));
            chosen = choose(target);
        }
        List<SpringPart> list = chosen.parts();
        ModelFile changed = file.withQuantities(chosen.design().quantities());
        Assessment after = Assessor.assess(changed.design());
        Assembly assembly = new Assembly(changed.design().platform().orElseThrow());
        Vec corner = AxisFrequencies.hz(assembly);
        SpringChecks checks = new SpringChecks(changed.design(), after, assembly);
        findings.addAll(corners(target.cornerHz(), corner));
        wish.reduction().ifPresent(r -> findings.add(reduction(r, changed.design())));
        if (wish.hold()) {
            findings.add(hold(after));
        }
        list.forEach(p -> findings.addAll(p.findings()));
        findings.addAll(checks.all(corner));
        Optional<SpringChecks.LiftOff> liftOff = checks.liftOff(list);
        liftOff.ifPresent(l -> findings.add(finding(l)));
        return new SpringAnswer(changed, before, after, target.cornerHz(), corner, checks.surgeHz(), list, shift,
            target.ballast() + chosen.ballast(), target.ballast() > 0 ? target.at() : chosen.centre(), ElasticCentre.of(assembly), findings,
            TravelOverFrequency.of(changed.design()), liftOff.map(SpringChecks.LiftOff::level)
                .orElse(Double.POSITIVE_INFINITY), chosen.compound(), target.search(),
            PlatformReduction.tenfold(changed.design()), BodyExtent.box(changed.design().platform().orElseThrow(), Vec.ZERO).largest());
    }

    /**
     * Parts for a target.
     *
     * @param ballast added to close natural frequencies that are too high, kg
     * @param centre  its place, m
     */
    private record Chosen(Design design, List<SpringPart> parts, Optional<Elastomer> compound, double ballast, Vec centre) { }

    private Chosen choose(SpringTarget target) {
        NaturalFrequencySolver solved = target.solved();
        PlatformNumbers numbers = new PlatformNumbers(solved.design());
        SpringParts parts = new SpringParts(solved.design(), wish, solved.cornerHz(), travel(solved.design()));
        List<SpringPart> list = parts.choose(numbers);
        Design orderable = numbers.design();
        double closing = Ballast.closing(orderable, target.cornerHz());
        Vec centre = orderable.platform().orElseThrow().centreOfGravity();
        numbers.ballast(closing, centre);
        return new Chosen(numbers.design(), list, parts.compound(), closing, centre);
    }

    /** Refuses what no spring can correct: a body, or springs, that do not go into the box at all. */
    private static void fits(Platform p) {
        Vec need = BodyExtent.box(p, Vec.ZERO);
        for (Axis a : Axis.ALL) {
            if (need.get(a) >= p.boxLimit().get(a)) {
                throw new ImpossibleRequestException(String.format(Locale.ROOT,
                    "the box of platform.limits.box is %.4g mm along %s, and body "
                    + "and springs alone take "
                    + "%.4g mm: no spring makes that fit; a larger box, a smaller body, or springs nearer to its middle",
                    1e3 * p.boxLimit().get(a), a.letter(), 1e3 * need.get(a)));
            }
        }
    }

    /** Largest motion along each axis either way, m; the sag where nothing else moves. */
    private static Vec travel(Design exact) {
        Travel travel = Assessor.assess(exact).travel().orElseThrow();
        return Vec.perAxis(a -> Math.max(travel.counted().get(a), travel.sag().get(a)));
    }

    private static double reached(SpringRequest.Reduction wanted, Design design) {
        double to = Math.max(design.requirement().toHz(), 1.001 * wanted.frequencyHz());
        return PlatformReduction.leastDb(design, wanted.frequencyHz(), to);
    }

    private static TargetCheck reduction(SpringRequest.Reduction wanted, Design changed) {
        double reached = reached(wanted, changed);
        return TargetCheck.of("reduction", reached >= wanted.decibels(), String.format(Locale.ROOT, "the platform takes %.2f "
            + "dB away from %.4g Hz "
            + "on, wanted %.4g dB", reached, wanted.frequencyHz(), wanted.decibels()),
            "a natural frequency lower by some per cent, or --parts rates");
    }

    private static TargetCheck finding(SpringChecks.LiftOff first) {
        return TargetCheck.of("lift_off", first.level() > 1, String.format(Locale.ROOT,
            "the first spring (%s) goes slack at %.3g times the stated vibration", first.group(), first.level()), String.format(Locale.ROOT,
            "a preload of %.3g N instead of %.3g N, or less travel: a higher natural frequency", 1.1 * first.preload() / first.level(),
            first.preload()));
    }

    private static TargetCheck hold(Assessment after) {
        List<String> broken = after.requirements().stream().filter(r -> !r.met()).map(r -> r.name().replace('_', ' ') + (r.hasMargin()
            ? String.format(Locale.ROOT, " by %.2f dB", -r.marginDb()) : String.format(Locale.ROOT, " uses %.0f %%",
            100 * r.usedShare()))).toList();
        return TargetCheck.of("hold", broken.isEmpty(), broken.isEmpty() ? "every requirement is met together with the cancellation"
            : "not met: " + String.join(", ", broken), "more clearance or mass for the springs, or a better cancellation: assess "
            + "names its leading cause");
    }

    private static List<TargetCheck> corners(Vec wanted, Vec reached) {
        List<TargetCheck> list = new ArrayList<>();
        for (Axis a : Axis.ALL) {
            double off = reached.get(a) / wanted.get(a) - 1;
            list.add(TargetCheck.of("natural_frequency_" + a.letter(), Math.abs(off) <= 0.01, String.format(Locale.ROOT,
                "natural frequency %s %.2f Hz, wanted %.2f Hz "
                + "(%+.2f %%)", a.letter(), reached.get(a), wanted.get(a), Math.rint(1e4 * off) / 100 + 0.0),
                "springs made to the rates (--parts rates), other parts, or a target these parts can meet"));
        }
        return list;
    }
}
