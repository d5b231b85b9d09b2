package quietband.report.tolerance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import quietband.lot.Proportion;
import quietband.model.Requirement;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.page.Report;
import quietband.study.tolerance.ToleranceResult;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.campaign.UnitRow;
import quietband.tolerance.influence.LikeliestFailure;
import quietband.tolerance.influence.ToleranceInfluence;
import quietband.tolerance.judge.RequirementKind;
import quietband.tolerance.judge.UnitVerdict;

/** What a Monte Carlo says in words and rows, for a terminal and for the page. */
final class ToleranceText {

    private ToleranceText() { }

    /** The lines for a terminal and the page. */
    static void say(Report report, ToleranceResult f, Provenance from, List<String> charts) {
        MonteCarloResult o = f.outcome();
        report.line(report.title()).line("model %s, quietband %s, seed %d, %d units%s", from.shortHash(), from.version(), from.seed(),
            o.units(), o.partial() ? " (stopped: PARTIAL)" : "").line("");
        report.line("%-24s %8s  %-20s %s", "condition", "yield", confidence(f) + " interval", "fails");
        yields(f).forEach(row -> report.line("%-24s %8s  %-20s %s", row.toArray()));
        report.line("");
        f.influence().ifPresent(i -> {
            report.line("%-20s %6s %6s %6s  %s", "", "Sobol", "Sobol", "rank", "")
                .line("%-20s %6s %6s %6s  %s", "tolerance", "first", "total", "corr.", "yield with half of it");
            ordered(i).forEach(l -> report.line("%-20s %6.3f %6.3f %6.3f  %s to %s%s", l.name(), l.sobol().first(), l.sobol().total(),
                l.rank(), percent(l.from()), percent(l.to()), l.group().size() > 1 ? "  (indices of " + String.join(" + ", l.group()) + ")"
                : ""));
            report.line("");
        });
        report.lines(sentences(f));
        report.head(f.yieldMet().map(met -> met ? "YIELD HOLDS" : "YIELD NOT DEMONSTRATED").orElse("YIELD"),
            f.yieldMet().map(met -> met ? "holds" : "fails").orElse("none"), verdict(f));
        report.part("Yield").say(NumberFormat.text("%d units, seed %d, model hash %s%s.", o.units(), from.seed(), from.modelHash(),
            o.partial() ? "; stopped before the end: partial" : "")).say(sentences(f)).say(f.plan().notes())
            .table("Share of good units", List.of("condition", "yield", confidence(f) + " interval", "fails (units)"), yields(f));
        f.influence().ifPresent(i -> influence(report, i));
        Report.Part residual = report.part("Residual of the units").say("Worst axis in the nominal condition: 5, 50, 95 and 99 % of all "
            + "units stay below the lines.");
        charts.forEach(residual::inline);
        report.part("Margins").say("Margin of the residual at each unit's worst point, nominal condition.").table("Worst units; --replay "
            + "UNIT writes one as a model", List.of("unit", "margin", "at", "axis", "fails"), o.worst().stream()
            .map(ToleranceText::worst).toList()).inline(ToleranceBars.margins(o.margins()));
    }

    private static void influence(Report report, ToleranceInfluence influence) {
        report.part("Which tolerance costs the most").say(influence.evaluations() + " units were worked out for this table, in the nominal "
            + "condition; halving was tried on the first " + influence.halvedUnits() + ": all that fail or nearly do, and some of the "
            + "others, evenly spread.").table("Sobol indices of the worst margin, rank correlation, and the yield with half the tolerance",
            List.of("tolerance", "first order", "interval", "total", "interval", "rank", "tighten this one by half: yield",
                "indices shared with"), ordered(influence).stream().map(l -> List.of(l.name(), share(l.sobol().first()),
                share(l.sobol().firstLow()) + " to " + share(l.sobol().firstHigh()), share(l.sobol().total()),
                share(l.sobol().totalLow()) + " to " + share(l.sobol().totalHigh()), share(l.rank()),
                percent(l.from()) + " to " + percent(l.to()), l.group().size() > 1 ? String.join(" + ", l.group()) : "")).toList())
            .inline(ToleranceBars.influence(influence));
    }

    private static String share(double v) {
        return NumberFormat.text("%.3f", v);
    }

    private static List<String> worst(UnitRow r) {
        UnitVerdict v = r.verdicts().get(0);
        return List.of(Long.toString(r.index() + 1), NumberFormat.text("%.2f dB", v.marginDb()),
            NumberFormat.brief(v.frequencyHz(), 4) + " Hz", v.axis(),
            String.join(", ", v.failures().stream().map(a -> a.key().replace('_', ' ')).toList()));
    }

    private static String confidence(ToleranceResult f) {
        return NumberFormat.brief(100 * f.confidence(), 4) + " %";
    }

    /** Tolerances with the one that costs most first. */
    static List<ToleranceInfluence.Line> ordered(ToleranceInfluence i) {
        return i.lines().stream().sorted(Comparator.comparingDouble((ToleranceInfluence.Line l) -> l.from() - l.to())
            .thenComparingDouble(l -> -l.sobol().total())).toList();
    }

    /** Condition, yield, interval, what fails; the last row for all conditions at once. */
    private static List<List<String>> yields(ToleranceResult f) {
        List<List<String>> rows = new ArrayList<>();
        MonteCarloResult o = f.outcome();
        for (int c = 0; c < o.conditions().size(); c++) {
            List<String> failed = new ArrayList<>();
            for (RequirementKind a : RequirementKind.values()) {
                if (o.failed(c, a) > 0) {
                    failed.add(a.key().replace('_', ' ') + " " + o.failed(c, a));
                }
            }
            rows.add(List.of(o.conditions().get(c), percent(f.yieldIn(c).estimate()), interval(f.yieldIn(c)),
                String.join(", ", failed)));
        }
        rows.add(List.of("all of them", percent(f.yieldInAll().estimate()), interval(f.yieldInAll()), ""));
        return rows;
    }

    private static String interval(Proportion p) {
        return NumberFormat.text("%.2f to %.2f %%", 100 * p.low(), 100 * p.high());
    }

    private static String percent(double share) {
        return NumberFormat.text("%.2f %%", 100 * share);
    }

    /** Everything that is said in a sentence. */
    private static List<String> sentences(ToleranceResult f) {
        List<String> s = new ArrayList<>();
        MonteCarloResult o = f.outcome();
        if (f.plan().nominal().requirement().residual().isPresent() || f.plan().nominal().requirement().fromPhaseNoise()) {
            s.add(NumberFormat.text("A residual limit of %.4f, %.4f and %.4f times the stated one would give 90, 95 and 99 %%.",
                o.margins().limitFactor(0.9), o.margins().limitFactor(0.95), o.margins().limitFactor(0.99)));
            s.add(NumberFormat.text("On the table's %d points alone %d units would be decided otherwise (yield %s).",
                o.frequencies().length, o.evenlyDiffers(), percent((double) o.evenlyMet() / o.units())));
        }
        if (o.redrawn() > 0) {
            s.add(o.redrawn() + " impossible draws were drawn again; truncated distributions would avoid them.");
        }
        f.likeliest().ifPresent(l -> s.add(likeliest(l)));
        if (f.likeliest().filter(LikeliestFailure::bounded).isPresent()) {
            s.add("So many numbers are drawn that the search for it was ended at its bound of work: a likelier one may exist.");
        }
        if (f.unasked()) {
            s.add("Stopped: influence of the tolerances and likeliest failing unit were not worked out.");
        }
        f.influence().filter(i -> !i.lines().isEmpty()).ifPresent(i -> {
            ToleranceInfluence.Line first = ordered(i).get(0);
            if (first.to() > first.from()) {
                s.add(NumberFormat.text("Tolerance '%s' costs most: halving it takes the yield from %s to %s.", first.name(),
                    percent(first.from()), percent(first.to())));
            }
        });
        s.add(verdict(f));
        return s;
    }

    private static String likeliest(LikeliestFailure l) {
        if (l.parts().isEmpty()) {
            return "The nominal unit fails: " + String.join(", ", l.failed().stream().map(r -> r.name().replace('_', ' ')).toList())
                + "; likeliest/model.yaml.";
        }
        return NumberFormat.text("Likeliest failing unit, %.2f sigma away: %s; fails %s; likeliest/model.yaml.", l.distance(),
            String.join(", ", l.parts()), String.join(", ", l.failed().stream().map(r -> r.name().replace('_', ' ')).toList()));
    }

    private static String verdict(ToleranceResult f) {
        Optional<Requirement.Yield> asked = f.asked();
        if (asked.isEmpty()) {
            return NumberFormat.text("Yield %s (%s).", percent(f.yieldIn(0).estimate()), interval(f.yieldIn(0)));
        }
        double share = asked.get().share();
        double confidence = asked.get().confidence();
        String needed = share < 1 && confidence < 1
            ? " (without a failure " + Proportion.unitsNeeded(share, confidence, 0) + " units would show it)" : "";
        return NumberFormat.text("YIELD %s: at least %s with %s %% confidence, required %s%s", f.yieldMet().orElseThrow()
            ? "HOLDS" : "NOT DEMONSTRATED", percent(f.atLeast()), NumberFormat.brief(100 * confidence, 4), percent(share), needed);
    }
}
