package quietband.report.lot;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import quietband.lot.ComponentDistribution;
import quietband.lot.Proportion;
import quietband.lot.SortRule;
import quietband.lot.SortedLot;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.page.Report;
import quietband.report.svg.Picture;
import quietband.study.lot.SortStudy;

/** What a sorted lot says in words and rows, for a terminal and for the page. */
final class LotText {

    private LotText() { }

    /** What a class is called: by its upper edge, in ppb/g. */
    static String className(SortedLot s, SortedLot.Edge e) {
        double[] edges = s.rule().edgesPpbPerG();
        return Double.isFinite(e.edgePpbPerG()) ? "to " + NumberFormat.json(e.edgePpbPerG())
            : "over " + NumberFormat.json(edges[edges.length - 1]);
    }

    static void say(Report report, SortStudy study, Provenance from) {
        SortedLot s = study.sorted();
        List<List<String>> rows = rows(study);
        List<String> told = sentences(study);
        report.line("%s %s, quietband %s, %d units by %s", from.input(), from.shortHash(), from.version(), s.count(), by(s)).line("");
        report.line("%-10s %8s %8s %-18s %8s %10s", "ppb/g", "units", "up to", confidence(s), "fitted", "per good");
        rows.forEach(row -> report.line("%-10s %8s %8s %-18s %8s %10s", row.toArray()));
        report.line("").lines(told).head("SORTED", "none", verdict(s));
        report.part("Yield").say(told).table("Classes by " + by(s) + ", ppb/g", List.of("class", "units in it", "share up to its edge",
            confidence(s), "by the fitted distribution", "units built per good one"), rows);
        report.part("Where the units lie").chart(Picture.of("chart-lengths", LotBars.lengths(s)));
        report.part("Other limits").table("What other limits would give", List.of("limit, ppb/g", "share", confidence(s),
            "by the fitted distribution",
            "units built per good one"), IntStream.range(0, study.limits().size()).filter(k -> k % 2 == 1)
            .mapToObj(k -> limit(s, study.limits().get(k))).toList());
        if (s.within().isPresent()) {
            report.part("Guard band").say("How far below the limit a reading must stay, and what that costs.")
                .table("Guard bands; shares of all units", List.of("guard band, ppb/g", "accepted", "false accept",
                    "false reject"), study.guards().stream().map(g -> List.of(NumberFormat.brief(g.guardPpbPerG(), 3),
                    percent(g.accepted().estimate()), percent(g.risks().acceptedBad()), percent(g.risks().refusedGood()))).toList());
        }
    }

    private static List<String> limit(SortedLot s, SortStudy.OtherLimit l) {
        return List.of(NumberFormat.brief(l.limitPpbPerG(), 3), percent(l.share().estimate()), interval(l.share()),
            s.fitted().isPresent() ? percent(l.fittedShare()) : "", perGood(1 / l.share().estimate()));
    }

    private static String by(SortedLot s) {
        return s.rule().by() == SortRule.By.VECTOR ? "vector" : "worst axis";
    }

    private static String confidence(SortedLot s) {
        return NumberFormat.brief(100 * s.rule().confidence(), 4) + " % interval";
    }

    /** Class, units in it, share up to its edge, interval, share by the law, units built per good one. */
    private static List<List<String>> rows(SortStudy study) {
        List<List<String>> rows = new ArrayList<>();
        for (SortStudy.BuiltClass k : study.classes()) {
            SortedLot.Edge e = k.edge();
            boolean last = Double.isInfinite(e.edgePpbPerG());
            rows.add(List.of(className(study.sorted(), e), Long.toString(e.inClass()), percent(e.share().estimate()), interval(e.share()),
                last || Double.isNaN(e.fittedShare()) ? "" : percent(e.fittedShare()), last ? "" : perGood(e.builtPerGood())));
        }
        return rows;
    }

    private static String perGood(double built) {
        return Double.isInfinite(built) ? "none seen" : NumberFormat.brief(built, 4);
    }

    private static String percent(double share) {
        return NumberFormat.text(share < 0.01 ? "%.3f %%" : "%.2f %%", 100 * share);
    }

    private static String interval(Proportion p) {
        return NumberFormat.text("%.2f to %.2f %%", 100 * p.low(), 100 * p.high());
    }

    /** The headline. */
    private static String verdict(SortedLot s) {
        return NumberFormat.text("%d of %d accepted: yield %s (%s).", s.acceptedCount(), s.count(),
            percent(s.yield().estimate()), interval(s.yield()));
    }

    /** Everything that is said in a sentence. */
    private static List<String> sentences(SortStudy study) {
        SortedLot s = study.sorted();
        SortRule rule = s.rule();
        List<String> said = new ArrayList<>();
        String band = rule.guardPpbPerG() > 0 ? " less a guard band of " + NumberFormat.json(rule.guardPpbPerG()) + " ppb/g" : "";
        String risk = rule.risk() < 1 ? ", at most " + percent(rule.risk()) + " chance to be beyond it" : "";
        said.add("Limit " + NumberFormat.json(rule.limitPpbPerG()) + " ppb/g by " + by(s) + band + risk + ": " + verdict(s));
        said.add(toBuild(study));
        study.risks().ifPresentOrElse(r -> said.add(NumberFormat.text("Of all units %s are false accepts (beyond the limit), %s "
            + "false rejects (within it), by the stated uncertainties.", percent(r.acceptedBad()), percent(r.refusedGood()))),
            () -> said.add("No uncertainties, no risks: state them in columns x_uncertainty_ppb_per_g, y_, z_ or with --uncertainty."));
        s.fitted().ifPresentOrElse(l -> said.addAll(law(study, l)), () -> said.add("Too few units to fit a distribution."));
        if (!s.lot().bad().isEmpty()) {
            said.add(s.lot().bad().size() + " rows had something wrong: " + (s.refused() > 0 ? "they count as built and refused"
                : "repeated serials are judged, the others are neither judged nor counted") + "; bad_rows.csv lists them.");
        }
        return said;
    }

    private static String toBuild(SortStudy study) {
        SortRule rule = study.sorted().rule();
        String goal = NumberFormat.text("For %d good ones with %s %% confidence build ", rule.wanted(),
            NumberFormat.brief(100 * rule.confidence(), 4));
        if (study.build() < 0) {
            return goal + "more than can be said: none was accepted.";
        }
        return goal + study.build() + (study.cautious() > 0 ? ", or " + study.cautious() + " at the lower end of the yield" : "") + ".";
    }

    private static List<String> law(SortStudy study, ComponentDistribution l) {
        double allowed = 1.36 / Math.sqrt(study.sorted().value().length);
        return List.of(NumberFormat.text(
            "Fitted distribution of the components: x %+.3f +- %.3f, y %+.3f +- %.3f, z %+.3f +- %.3f ppb/g, "
            + "correlation xy %.2f, xz %.2f, yz %.2f; within the limit %s +- %s.", l.mean()[0], l.sigma(0), l.mean()[1], l.sigma(1),
            l.mean()[2], l.sigma(2), l.correlation(0, 1), l.correlation(0, 2), l.correlation(1, 2), percent(study.atLimit().fittedShare()),
            percent(study.atLimit().fittedError())), NumberFormat.text(
                "Fitted distribution and lot differ by at most %.3f in share (%.3f would be "
            + "much): %s.", study.distance(), allowed, study.distance() > allowed
            ? "the components are not normal, trust the shares seen" : "no evidence against it"));
    }
}
