package quietband.report.lot;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.lot.BuildCount;
import quietband.lot.ComponentLaw;
import quietband.lot.Proportion;
import quietband.lot.SortRule;
import quietband.lot.SortedLot;
import quietband.report.assess.AssessmentSources;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.page.Caution;
import quietband.report.page.CommandPage;
import quietband.report.page.PageHead;
import quietband.report.page.PageTable;

/** What a sorted lot says in words and rows, for a terminal and for the page. */
final class LotText {

    private LotText() { }

    /** What a class is called: by its upper edge, in ppb/g. */
    static String className(SortedLot s, int k) {
        double[] edges = s.rule().edgesPpbPerG();
        return k < edges.length ? "to " + NumberFormat.json(edges[k]) : "over " + NumberFormat.json(edges[edges.length - 1]);
    }

    /** The summary for a terminal, each line ended. */
    static String of(SortedLot s, Provenance from) {
        List<String> lines = new ArrayList<>();
        lines.add(String.format(Locale.ROOT, "%s %s, quietband %s, %d units by %s", from.input(), from.modelHash().substring(0, 12),
            from.version(), s.count(), by(s)));
        lines.add("");
        lines.add(String.format(Locale.ROOT, "%-10s %8s %8s %-18s %8s %10s", "ppb/g", "units", "up to", confidence(s), "law",
            "per good"));
        for (List<String> row : rows(s)) {
            lines.add(String.format(Locale.ROOT, "%-10s %8s %8s %-18s %8s %10s", row.toArray()).stripTrailing());
        }
        lines.add("");
        lines.addAll(sentences(s));
        lines.add(Caution.PREDICTION);
        return String.join("\n", lines) + "\n";
    }

    private static String by(SortedLot s) {
        return s.rule().by() == SortRule.By.VECTOR ? "vector" : "worst axis";
    }

    private static String confidence(SortedLot s) {
        return NumberFormat.brief(100 * s.rule().confidence(), 4) + " % interval";
    }

    /** Class, units in it, share up to its edge, interval, share by the law, units built per good one. */
    static List<List<String>> rows(SortedLot s) {
        List<List<String>> rows = new ArrayList<>();
        int k = 0;
        for (SortedLot.Edge e : s.edges()) {
            boolean last = Double.isInfinite(e.edgePpbPerG());
            rows.add(List.of(className(s, k++), Long.toString(e.inClass()), percent(e.share().estimate()), interval(e.share()),
                last || Double.isNaN(e.lawShare()) ? "" : percent(e.lawShare()), last ? "" : perGood(e.builtPerGood())));
        }
        return rows;
    }

    private static String perGood(double built) {
        return Double.isInfinite(built) ? "none seen" : NumberFormat.brief(built, 4);
    }

    static String percent(double share) {
        return String.format(Locale.ROOT, share < 0.01 ? "%.3f %%" : "%.2f %%", 100 * share);
    }

    private static String interval(Proportion p) {
        return String.format(Locale.ROOT, "%.2f to %.2f %%", 100 * p.low(), 100 * p.high());
    }

    /** The headline. */
    static String verdict(SortedLot s) {
        return String.format(Locale.ROOT, "%d of %d accepted: yield %s (%s).", s.acceptedCount(), s.count(),
            percent(s.yield().estimate()), interval(s.yield()));
    }

    /** Everything that is said in a sentence. */
    static List<String> sentences(SortedLot s) {
        SortRule rule = s.rule();
        List<String> said = new ArrayList<>();
        String band = rule.guardPpbPerG() > 0 ? " less a guard band of " + NumberFormat.json(rule.guardPpbPerG()) + " ppb/g" : "";
        String risk = rule.risk() < 1 ? ", at most " + percent(rule.risk()) + " chance to be beyond it" : "";
        said.add("Limit " + NumberFormat.json(rule.limitPpbPerG()) + " ppb/g by " + by(s) + band + risk + ": " + verdict(s));
        said.add(toBuild(s));
        s.risks().ifPresentOrElse(r -> said.add(String.format(Locale.ROOT, "Of all units %s are accepted though beyond the limit, %s are "
            + "refused though within it, by the stated uncertainties.", percent(r.acceptedBad()), percent(r.refusedGood()))),
            () -> said.add("No uncertainties, no risks: state them in columns x_uncertainty_ppb_per_g, y_, z_ or with --uncertainty."));
        s.law().ifPresentOrElse(l -> said.addAll(law(s, l)),
            () -> said.add("Too few units to fit a law of the components."));
        if (!s.lot().bad().isEmpty()) {
            said.add(s.lot().bad().size() + " rows had something wrong: " + (s.refused() > 0 ? "they count as built and refused"
                : "repeated serials are judged, the others are neither judged nor counted") + "; bad_rows.csv lists them.");
        }
        return said;
    }

    private static String toBuild(SortedLot s) {
        SortRule rule = s.rule();
        long n = BuildCount.of(rule.wanted(), s.yield().estimate(), rule.confidence());
        long cautious = BuildCount.of(rule.wanted(), s.yield().atLeast(), rule.confidence());
        String goal = String.format(Locale.ROOT, "For %d good ones with %s %% confidence build ", rule.wanted(),
            NumberFormat.brief(100 * rule.confidence(), 4));
        if (n < 0) {
            return goal + "more than can be said: none was accepted.";
        }
        return goal + n + (cautious > 0 ? ", or " + cautious + " at the lower end of the yield" : "") + ".";
    }

    private static List<String> law(SortedLot s, ComponentLaw l) {
        List<String> said = new ArrayList<>();
        said.add(String.format(Locale.ROOT, "Law of the components: x %+.3f +- %.3f, y %+.3f +- %.3f, z %+.3f +- %.3f ppb/g, correlation "
            + "xy %.2f, xz %.2f, yz %.2f; within the limit %s +- %s.", l.mean()[0], l.sigma(0), l.mean()[1], l.sigma(1), l.mean()[2],
            l.sigma(2), l.correlation(0, 1), l.correlation(0, 2), l.correlation(1, 2), percent(s.lawShare(s.rule().limitPpbPerG())),
            percent(s.lawError(s.rule().limitPpbPerG()))));
        double distance = s.lawDistance();
        double allowed = 1.36 / Math.sqrt(s.value().length);
        said.add(String.format(Locale.ROOT, "Law and lot differ by at most %.3f in share (%.3f would be much): %s.", distance, allowed,
            distance > allowed ? "the components are not normal, trust the shares seen" : "no sign against the law"));
        return said;
    }

    /** The page. */
    static CommandPage page(SortedLot s, Provenance from, String chart) {
        PageHead head = new PageHead("Lot " + from.input(), "SORTED", "none", verdict(s), from,
            AssessmentSources.today());
        PageTable classes = new PageTable("Classes by " + by(s) + ", ppb/g", List.of("class", "units in it", "share up to its edge",
            confidence(s), "by the law", "units built per good one"), rows(s));
        List<CommandPage.Part> parts = new ArrayList<>();
        parts.add(new CommandPage.Part("Yield", sentences(s), List.of(classes), List.of()));
        parts.add(new CommandPage.Part("Where the units lie", List.of(), List.of(), List.of(chart)));
        parts.add(new CommandPage.Part("Other limits", List.of(), List.of(limits(s)), List.of()));
        if (s.within().isPresent()) {
            parts.add(new CommandPage.Part("Guard band", List.of("How far below the limit a reading must stay, and what that costs."),
                List.of(guards(s)), List.of()));
        }
        return new CommandPage(head, parts);
    }

    private static PageTable limits(SortedLot s) {
        List<List<String>> rows = new ArrayList<>();
        double[] limits = LotLimits.limits(s);
        for (int k = 1; k < limits.length; k += 2) {
            Proportion p = s.shareWithin(limits[k]);
            rows.add(List.of(NumberFormat.brief(limits[k], 3), percent(p.estimate()), interval(p),
                s.law().isPresent() ? percent(s.lawShare(limits[k])) : "", perGood(1 / p.estimate())));
        }
        return new PageTable("What other limits would give", List.of("limit, ppb/g", "share", confidence(s), "by the law",
            "units built per good one"), rows);
    }

    private static PageTable guards(SortedLot s) {
        List<List<String>> rows = LotFiles.guards(s).stream().map(g -> {
            SortedLot.Risks r = s.risksWithGuard(g);
            return List.of(NumberFormat.brief(g, 3), percent(s.shareWithin(s.rule().limitPpbPerG() - g).estimate()),
                percent(r.acceptedBad()), percent(r.refusedGood()));
        }).toList();
        return new PageTable("Guard bands; shares of all units", List.of("guard band, ppb/g", "accepted", "accepted though bad",
            "refused though good"), rows);
    }
}
