package quietband.study.lot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import quietband.lot.BuildCount;
import quietband.lot.MeasuredLot;
import quietband.lot.Proportion;
import quietband.lot.SortRule;
import quietband.lot.SortedLot;

/**
 * A sorted lot and what follows from it.
 *
 * @param sorted     the lot
 * @param classes    with units to build, the one beyond the last edge included
 * @param risks      of accepting and refusing the wrong ones; empty without uncertainties
 * @param build      units to build for the good ones wanted, by the yield seen; -1 beyond any count
 * @param cautious   the same by the yield's lower end
 * @param atLimit    what the law gives at the limit itself
 * @param distance   largest distance between the shares of lot and law; NaN without a law
 * @param limits     what other limits would give, rising
 * @param guards     what guard bands would give, rising; empty without uncertainties
 */
public record SortStudy(SortedLot sorted, List<BuiltClass> classes, Optional<SortedLot.Risks> risks, long build, long cautious,
                        OtherLimit atLimit, double distance, List<OtherLimit> limits, List<GuardBand> guards) {

    private static final int STEPS = 40;
    private static final int BANDS = 12;

    public SortStudy {
        classes = List.copyOf(classes);
        limits = List.copyOf(limits);
        guards = List.copyOf(guards);
    }

    /**
     * A class.
     *
     * @param build    units to build for the good ones wanted were this edge the limit, by the share seen; -1 beyond any count
     * @param cautious the same by the share's lower end
     */
    public record BuiltClass(SortedLot.Edge edge, long build, long cautious) { }

    /**
     * A limit that is not the one asked.
     *
     * @param limitPpbPerG the limit, ppb/g
     * @param share        of the units within it
     * @param fittedShare     the same by the fitted distribution; NaN without one
     * @param fittedError     standard error of that
     * @param build        units to build for the good ones wanted; -1 beyond any count
     */
    public record OtherLimit(double limitPpbPerG, Proportion share, double fittedShare, double fittedError, long build) { }

    /**
     * A guard band.
     *
     * @param guardPpbPerG how far below the limit a reading must stay, ppb/g
     * @param accepted     share of the units
     */
    public record GuardBand(double guardPpbPerG, Proportion accepted, SortedLot.Risks risks) { }

    /**
     * Sorts a lot.
     *
     * @param refused how many bad rows count as built and refused
     * @param threads how many share the work; changes no figure
     */
    public static SortStudy of(MeasuredLot lot, SortRule rule, int refused, int threads) {
        SortedLot s = SortedLot.of(lot, rule, refused, threads);
        List<BuiltClass> classes = s.edges().stream().map(e -> new BuiltClass(e, build(rule, e.share().estimate()),
            build(rule, e.share().atLeast()))).toList();
        // a twentieth of the larger of limit and median up to twice it, evenly
        double top = 2 * Math.max(rule.limitPpbPerG(), s.rising()[s.rising().length / 2]);
        List<OtherLimit> limits = IntStream.rangeClosed(1, STEPS).mapToObj(k -> limit(s, top * k / STEPS)).toList();
        return new SortStudy(s, classes, s.risks(), build(rule, s.yield().estimate()), build(rule, s.yield().atLeast()),
            limit(s, rule.limitPpbPerG()), s.fittedDistance(), limits, guards(s));
    }

    private static long build(SortRule rule, double share) {
        return BuildCount.of(rule.wanted(), share, rule.confidence());
    }

    private static OtherLimit limit(SortedLot s, double limit) {
        Proportion p = s.shareWithin(limit);
        return new OtherLimit(limit, p, s.fittedShare(limit), s.fittedError(limit), build(s.rule(), p.estimate()));
    }

    /** Guard bands worth a look: none to three times the median uncertainty. */
    private static List<GuardBand> guards(SortedLot s) {
        List<GuardBand> guards = new ArrayList<>();
        if (s.within().isPresent()) {
            double[] sigma = s.lot().sigmaPpbPerG().orElseThrow()[0].clone();
            Arrays.sort(sigma);
            for (int k = 0; k <= BANDS; k++) {
                double g = 0.25 * k * sigma[sigma.length / 2];
                if (g < s.rule().limitPpbPerG()) {
                    guards.add(new GuardBand(g, s.shareWithin(s.rule().limitPpbPerG() - g), s.risksWithGuard(g)));
                }
            }
        }
        return guards;
    }
}
