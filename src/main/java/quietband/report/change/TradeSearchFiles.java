package quietband.report.change;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.demand.RequirementResult;
import quietband.model.edit.ModelFile;
import quietband.report.assess.AssessmentSources;
import quietband.report.assess.AssessmentSummary;
import quietband.report.assess.AssessmentText;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.file.ResultDirectory;
import quietband.report.page.Caution;
import quietband.report.page.CommandPage;
import quietband.report.page.PageHead;
import quietband.report.page.PageTable;
import quietband.report.page.PageTemplates;
import quietband.report.page.VerdictSentence;
import quietband.report.tolerance.ToleranceFiles;
import quietband.response.verdict.Assessment;
import quietband.tuning.trade.TradeSearch;
import quietband.tuning.trade.VariedQuantity;
import quietband.units.Unit;

/** What the command trade writes for a search: changed model, table, page, summary, text. */
public final class TradeSearchFiles {

    private final TradeSearch search;
    private final ModelFile changed;
    private final List<Unit> units;
    private final String goal;
    private final Provenance from;

    /**
     * For a search.
     *
     * @param changed the model with what was found
     * @param units   in which each varied quantity is written
     * @param goal    margin or yield
     */
    public TradeSearchFiles(TradeSearch search, ModelFile changed, List<Unit> units, String goal, Provenance from) {
        this.search = search;
        this.changed = changed;
        this.units = List.copyOf(units);
        this.goal = goal;
        this.from = from;
    }

    /** Writes all files. */
    public void writeTo(ResultDirectory directory) {
        ToleranceFiles.write(directory, "", changed.bundle());
        directory.write("trade.csv", this::table);
        String page = PageTemplates.page(page());
        directory.write("report.html", w -> w.write(page));
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
    }

    private double now(int a) {
        return search.before().design().quantities().value(search.axes().get(a).what().slot(0));
    }

    private void table(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "of", "unit", "lower", "upper", "start", "found");
        for (int a = 0; a < units.size(); a++) {
            VariedQuantity v = search.axes().get(a);
            Unit u = units.get(a);
            csv.cell(v.what().path()).cell(u.text()).cell(TradeFiles.in(v.from(), u)).cell(TradeFiles.in(v.to(), u))
                .cell(TradeFiles.in(now(a), u)).cell(TradeFiles.in(search.values()[a], u));
            csv.end();
        }
    }

    private static double margin(Assessment a) {
        return a.verdict(a.fullest()).worst().marginDb();
    }

    private List<String> sentences() {
        List<String> s = new ArrayList<>();
        s.add(goal.equals("yield") ? String.format(Locale.ROOT, "Best yield %.2f %%; worst margin %s, before %s.",
            100 * search.goal(),
            db(margin(search.after())), db(margin(search.before()))) : "Best worst margin "
            + db(margin(search.after())) + ", before "
            + db(margin(search.before())) + ".");
        s.add(search.binding().isEmpty() ? "No limit and no bound is touched: the best lies inside them."
            : "It is held by: " + String.join("; ", search.binding()) + ".");
        s.add(search.looks() + " designs were judged, seed " + from.seed() + ".");
        s.add("Before: " + VerdictSentence.sentence(search.before()));
        s.add("After: " + VerdictSentence.sentence(search.after()));
        return s;
    }

    private static String db(double v) {
        return Double.isNaN(v) ? "not asked" : QuantityText.db(v);
    }

    private CommandPage page() {
        String title = changed.design().title();
        Boolean met = search.after().requirementMet().orElse(null);
        PageHead head = new PageHead(title.isEmpty() ? from.input() : title,
            met == null ? "NO VERDICT" : met ? "HOLDS" : "DOES NOT HOLD", met == null ? "none" : met ? "holds"
            : "fails",
            "best design within bounds: " + VerdictSentence.sentence(search.after()), from, AssessmentSources.today());
        List<List<String>> rows = new ArrayList<>();
        for (int a = 0; a < units.size(); a++) {
            VariedQuantity v = search.axes().get(a);
            Unit u = units.get(a);
            rows.add(List.of(v.what().path(), u.text(), NumberFormat.brief(TradeFiles.in(v.from(), u), 5),
                NumberFormat.brief(TradeFiles.in(v.to(), u), 5),
                NumberFormat.brief(TradeFiles.in(now(a), u), 5), NumberFormat.brief(TradeFiles.in(search.values()[a], u), 5)));
        }
        List<List<String>> asked = new ArrayList<>();
        for (RequirementResult r : search.after().requirements()) {
            String before = search.before().requirements().stream().filter(b -> b.name().equals(r.name())).findFirst()
                .map(TradeSearchFiles::outcome).orElse("-");
            asked.add(List.of(r.name().replace('_', ' '), before, outcome(r)));
        }
        return new CommandPage(head, List.of(new CommandPage.Part("What was found", sentences(), List.of(
            new PageTable("Varied within bounds", List.of("quantity", "unit", "lower", "upper", "start", "found"), rows),
            new PageTable("Everything asked", List.of("asked", "before", "after"), asked)), List.of())));
    }

    private static String outcome(RequirementResult r) {
        return (r.met() ? "" : "NOT MET, ") + (r.hasMargin() ? QuantityText.db(r.marginDb()) : String.format(Locale.ROOT,
            "%.1f %% used",
            100 * r.usedShare()));
    }

    /** The summary. */
    public String json() {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("title", changed.design().title()).field("goal", goal).field("value", search.goal());
            json.field("designs_judged", search.looks());
            json.array("varied", () -> {
                for (int a = 0; a < units.size(); a++) {
                    int i = a;
                    Unit u = units.get(a);
                    VariedQuantity v = search.axes().get(a);
                    json.object(() -> json.field("of", v.what().path()).field("unit", u.text()).field("lower",
                        TradeFiles.in(v.from(), u))
                        .field("upper", TradeFiles.in(v.to(), u)).field("start", TradeFiles.in(now(i), u))
                        .field("found", TradeFiles.in(search.values()[i], u)));
                }
            });
            json.array("binding", () -> search.binding().forEach(json::item));
            json.object("worst_margin_db", () -> json.field("before", margin(search.before())).field("after",
                margin(search.after())));
            json.field("requirement_met", search.after().requirementMet().orElse(null));
            json.array("requirements", () -> search.after().requirements().forEach(r ->
                AssessmentSummary.requirement(json, r)));
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    /** The summary for a terminal. */
    public String text() {
        List<String> lines = new ArrayList<>();
        lines.add(changed.design().title().isEmpty() ? from.input() : changed.design().title());
        lines.add("");
        for (int a = 0; a < units.size(); a++) {
            Unit u = units.get(a);
            lines.add("  " + search.axes().get(a).what().path());
            lines.add(String.format(Locale.ROOT, "      %s %s  ->  %s %s", NumberFormat.brief(TradeFiles.in(now(a), u), 5),
                u.text(),
                NumberFormat.brief(TradeFiles.in(search.values()[a], u), 5), u.text()));
        }
        lines.add("");
        sentences().forEach(s -> AssessmentText.hang("", s, lines));
        lines.add(Caution.PREDICTION);
        return String.join("\n", lines) + "\n";
    }
}
