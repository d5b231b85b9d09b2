package quietband.report.change;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import quietband.demand.RequirementResult;
import quietband.report.assess.AssessmentSummary;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.page.Report;
import quietband.report.page.VerdictSentence;
import quietband.response.verdict.Assessment;
import quietband.study.trade.DesignSearch;
import quietband.tuning.trade.TradeSearch;
import quietband.units.Unit;

/** A search of the command trade: changed model, table, page, summary, text. */
public final class TradeSearchReport {

    private TradeSearchReport() { }

    /** What was found of a varied quantity, in the unit of the table. */
    private record Found(VariedText of, double start, double found) { }

    /**
     * The report.
     *
     * @param units in which each varied quantity is written
     */
    public static Report of(DesignSearch study, List<Unit> units, Provenance from) {
        TradeSearch search = study.found();
        List<VariedText> axes = VariedText.all(search.axes(), units);
        List<Found> found = IntStream.range(0, axes.size()).mapToObj(a -> new Found(axes.get(a),
            axes.get(a).now(search.before().design()), axes.get(a).in(search.values()[a]))).toList();
        Report report = new Report(study.changed().design().title(), from).of(study.changed().design());
        report.model("", study.changed().bundle());
        report.table("trade.csv", "of,unit,lower,upper,start,found", found, (csv, v) -> csv.cell(v.of.path()).cell(v.of.unit().text())
            .cell(v.of.from()).cell(v.of.to()).cell(v.start).cell(v.found));
        report.summary(json -> {
            json.field("title", study.changed().design().title()).field("goal", study.goal().name().toLowerCase(Locale.ROOT))
                .field("value", search.goal()).field("designs_judged", search.looks());
            json.objects("varied", found, v -> json.field("of", v.of.path()).field("unit", v.of.unit().text()).field("lower", v.of.from())
                .field("upper", v.of.to()).field("start", v.start).field("found", v.found));
            json.items("binding", search.binding());
            json.object("worst_margin_db", () -> json.field("before", margin(search.before())).field("after", margin(search.after())));
            json.field("requirement_met", search.after().requirementMet().orElse(null));
            json.objects("requirements", search.after().requirements(), r -> AssessmentSummary.requirement(json, r));
        });
        List<String> told = sentences(study, from);
        report.line(report.title()).line("");
        found.forEach(v -> report.line("  " + v.of.path()).line("      %s %s  ->  %s %s", VariedText.brief(v.start), v.of.unit().text(),
            VariedText.brief(v.found), v.of.unit().text()));
        report.line("");
        told.forEach(s -> report.hang("", s));
        report.verdict(search.after(), "best design within bounds: " + VerdictSentence.sentence(search.after()));
        report.part("What was found").say(told).table("Varied within bounds", List.of("quantity", "unit", "lower", "upper", "start",
            "found"), found.stream().map(v -> List.of(v.of.path(), v.of.unit().text(), VariedText.brief(v.of.from()),
            VariedText.brief(v.of.to()), VariedText.brief(v.start), VariedText.brief(v.found))).toList())
            .table("Every requirement", List.of("requirement", "before", "after"), search.after().requirements().stream().map(r -> List.of(
                r.name().replace('_', ' '), search.before().requirements().stream().filter(b -> b.name().equals(r.name())).findFirst()
                .map(TradeSearchReport::outcome).orElse("-"), outcome(r))).toList());
        return report;
    }

    private static double margin(Assessment a) {
        return a.verdict(a.fullest()).worst().marginDb();
    }

    private static List<String> sentences(DesignSearch study, Provenance from) {
        TradeSearch search = study.found();
        String after = db(margin(search.after()));
        String before = db(margin(search.before()));
        return List.of(study.goal() == DesignSearch.Goal.YIELD ? NumberFormat.text("Best yield %.2f %%; worst margin %s, before "
            + "%s.", 100 * search.goal(), after, before) : "Best worst margin " + after + ", before " + before + ".",
            search.binding().isEmpty() ? "No limit and no bound is touched: the best lies inside them."
                : "It is held by: " + String.join("; ", search.binding()) + ".",
            search.looks() + " designs were judged, seed " + from.seed() + ".",
            "Before: " + VerdictSentence.sentence(search.before()), "After: " + VerdictSentence.sentence(search.after()));
    }

    private static String db(double v) {
        return Double.isNaN(v) ? "not required" : QuantityText.db(v);
    }

    private static String outcome(RequirementResult r) {
        return (r.met() ? "" : "NOT MET, ") + (r.hasMargin() ? QuantityText.db(r.marginDb())
            : NumberFormat.text("%.1f %% used", 100 * r.usedShare()));
    }
}
