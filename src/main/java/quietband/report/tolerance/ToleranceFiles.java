package quietband.report.tolerance;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.model.edit.ModelBundle;
import quietband.report.assess.AssessmentSources;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.page.CommandPage;
import quietband.report.page.PageHead;
import quietband.report.page.PageTable;
import quietband.report.page.PageTemplates;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.campaign.UnitRow;
import quietband.tolerance.influence.ToleranceInfluence;
import quietband.tolerance.influence.ToleranceResult;

/** What a Monte Carlo writes beside the table of units: percentiles, influence, summary, page. */
public final class ToleranceFiles {

    private final ToleranceResult findings;
    private final ToleranceCurves curves;
    private final Provenance from;

    /** For one Monte Carlo. */
    public ToleranceFiles(ToleranceResult findings, ToleranceCurves curves, Provenance from) {
        this.findings = findings;
        this.curves = curves;
        this.from = from;
    }

    /** Writes all of them. */
    public void writeTo(ResultDirectory directory) {
        directory.write("percentiles.csv", curves::writeTo);
        findings.influence().ifPresent(i -> directory.write("influence.csv", w -> ToleranceTables.influence(w, i)));
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
        String page = PageTemplates.page(page());
        directory.write("report.html", w -> w.write(page));
    }

    /** Writes a unit as a model with the files it refers to, in a folder of the result (empty: the result itself). */
    public static void write(ResultDirectory directory, String folder, ModelBundle bundle) {
        directory.write(folder + "model.yaml", w -> w.write(bundle.text()));
        bundle.files().entrySet().stream().sorted(java.util.Map.Entry.comparingByKey()).forEach(e ->
            directory.write(folder + e.getKey(), w -> w.write(new String(e.getValue(), StandardCharsets.UTF_8))));
    }

    /** The summary. */
    public String json() {
        return ToleranceSummary.json(findings, from);
    }

    /** The summary for a terminal. */
    public String text() {
        return ToleranceText.of(findings, from);
    }

    private CommandPage page() {
        String verdict = findings.yieldMet().map(met -> met ? "YIELD HOLDS" : "YIELD NOT SHOWN").orElse("YIELD");
        String kind = findings.yieldMet().map(met -> met ? "holds" : "fails").orElse("none");
        String title = findings.plan().nominal().title();
        PageHead head = new PageHead(title.isEmpty() ? from.input() : title, verdict, kind,
            ToleranceText.verdict(findings), from, AssessmentSources.today());
        List<CommandPage.Part> parts = new ArrayList<>();
        MonteCarloResult o = findings.outcome();
        List<String> told = new ArrayList<>(List.of(String.format(Locale.ROOT, "%d units, seed %d, model hash %s%s.", o.units(),
            from.seed(), from.modelHash(), o.partial() ? "; stopped before the end: partial" : "")));
        told.addAll(ToleranceText.sentences(findings));
        told.addAll(findings.plan().notes());
        parts.add(new CommandPage.Part("Yield", told, List.of(new PageTable("Share of good units", List.of("condition", "yield",
            ToleranceText.confidence(findings) + " interval", "fails (units)"), ToleranceText.yields(findings))), List.of()));
        findings.influence().ifPresent(i -> parts.add(influence(i)));
        parts.add(new CommandPage.Part("Residual of the units", List.of("Worst axis in the nominal condition: 5, 50, 95 and 99 % of all "
            + "units stay below the lines."), List.of(), curves.charts()));
        parts.add(new CommandPage.Part("Margins", List.of("Margin of the residual at each unit's worst point, nominal condition."),
            List.of(worst(o)), List.of(ToleranceBars.margins(o.margins()))));
        return new CommandPage(head, parts);
    }

    private CommandPage.Part influence(ToleranceInfluence influence) {
        List<List<String>> rows = ToleranceText.ordered(influence).stream().map(l -> List.of(l.name(), share(l.sobol().first()),
            share(l.sobol().firstLow()) + " to " + share(l.sobol().firstHigh()), share(l.sobol().total()),
            share(l.sobol().totalLow()) + " to " + share(l.sobol().totalHigh()), share(l.rank()),
            ToleranceText.percent(l.from()) + " to " + ToleranceText.percent(l.to()),
            l.group().size() > 1 ? String.join(" + ", l.group()) : "")).toList();
        PageTable grid = new PageTable("Sobol indices of the worst margin, rank correlation, and the yield with half the tolerance",
            List.of("tolerance", "first order", "interval", "total", "interval", "rank", "tighten this one by half: yield",
                "indices shared with"), rows);
        return new CommandPage.Part("Which tolerance costs the most", List.of(influence.evaluations()
            + " units were worked out for this table, in the nominal condition; halving was tried on the first "
            + influence.halvedUnits() + ": all that fail or nearly do, and some of the others, evenly spread."), List.of(grid),
            List.of(ToleranceBars.influence(influence)));
    }

    private static String share(double v) {
        return String.format(Locale.ROOT, "%.3f", v);
    }

    private static PageTable worst(MonteCarloResult o) {
        List<List<String>> rows = new ArrayList<>();
        for (UnitRow r : o.worst()) {
            rows.add(List.of(Long.toString(r.index() + 1), String.format(Locale.ROOT, "%.2f dB", r.verdicts().get(0).marginDb()),
                NumberFormat.brief(r.verdicts().get(0).frequencyHz(), 4) + " Hz", r.verdicts().get(0).axis(),
                String.join(", ", r.verdicts().get(0).failures().stream().map(a -> a.key().replace('_', ' ')).toList())));
        }
        return new PageTable("Worst units; --replay UNIT writes one as a model", List.of("unit", "margin", "at", "axis", "fails"), rows);
    }
}
