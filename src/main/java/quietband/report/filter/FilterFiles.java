package quietband.report.filter;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import quietband.demand.ResidualPoint;
import quietband.filter.design.FilterFacts;
import quietband.filter.design.FilterResult;
import quietband.filter.fixedpoint.FilterPeaks;
import quietband.model.Axis;
import quietband.model.edit.ModelFile;
import quietband.report.assess.AssessmentSources;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.file.ResultDirectory;
import quietband.report.page.Caution;
import quietband.report.page.CommandPage;
import quietband.report.page.PageHead;
import quietband.report.page.PageTemplates;
import quietband.report.tolerance.ToleranceFiles;
import quietband.response.verdict.StackVerdict;

/** What the design of a filter writes: the changed model with its filter, tables, charts, page, summary, text. */
public final class FilterFiles {

    private static final String MODEL_PATH = "What follows is by the model's own path, not by the measured one.";

    private final FilterResult result;
    private final ModelFile changed;
    private final Provenance from;
    private final PortReport port;
    private final Optional<MeasuredReport> measured;
    private final FactsReport facts;

    /** For one design; {@code changed} is the model that uses the filter. */
    public FilterFiles(FilterResult result, FilterFacts facts, ModelFile changed, Provenance from) {
        this.result = result;
        this.changed = changed;
        this.from = from;
        this.port = new PortReport(changed.design());
        this.measured = MeasuredReport.of(result);
        this.facts = new FactsReport(result, facts);
    }

    /** Writes all files. */
    public void writeTo(ResultDirectory directory) {
        ToleranceFiles.write(directory, "", changed.bundle());
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
        port.writeTo(directory);
        measured.ifPresent(m -> m.writeTo(directory));
        facts.writeTo(directory);
        String page = PageTemplates.page(page());
        directory.write("report.html", w -> w.write(page));
    }

    /** The summary. */
    public String json() {
        return FilterSummary.json(result, from, port, measured, facts);
    }

    /** The summary for a terminal. */
    public String text() {
        List<String> lines = new ArrayList<>();
        lines.add(title());
        lines.add(String.format(Locale.ROOT, "model %s, quietband %s", from.modelHash().substring(0, 12), from.version()));
        lines.add("");
        lines.add(sentence("before", FilterResult.fullest(result.before())));
        lines.add(sentence("after", FilterResult.fullest(result.after())));
        lines.add("");
        for (Axis axis : Axis.ALL) {
            int i = axis.ordinal();
            lines.add(String.format(Locale.ROOT, "filter %s: largest coefficient %s, peak gain %.2f dB at %s", axis.letter(),
                NumberFormat.brief(FilterPeaks.largest(result.found().filters().get(i)), 5),
                FilterSummary.decibels(result.found().peaks().get(i).gain()),
                QuantityText.hz(result.found().peaks().get(i).frequencyHz())));
        }
        measured.ifPresent(m -> lines.addAll(m.lines()));
        lines.add(port.line());
        measured.ifPresent(m -> lines.add(MODEL_PATH));
        lines.addAll(facts.lines());
        lines.add("");
        lines.add(Caution.PREDICTION);
        return String.join("\n", lines) + "\n";
    }

    private String title() {
        return result.changed().title().isEmpty() ? from.input() : result.changed().title();
    }

    private static String sentence(String when, StackVerdict v) {
        ResidualPoint w = v.worst();
        return String.format(Locale.ROOT, "%-7s worst %s ppb/g at %s, axis %s%s", when + ":", QuantityText.ppb(w.residualPerG()),
            QuantityText.hz(w.frequencyHz()), w.axis(), v.asked() ? ", margin " + QuantityText.db(w.marginDb()) : "");
    }

    private CommandPage page() {
        PageHead head = new PageHead(title(), "FILTER", "none",
            measured.map(MeasuredReport::headline).orElseGet(() -> sentence("after", FilterResult.fullest(result.after()))), from,
            AssessmentSources.today());
        List<CommandPage.Part> parts = new ArrayList<>();
        parts.add(new CommandPage.Part("Residual", List.of(sentence("before", FilterResult.fullest(result.before())),
            sentence("after", FilterResult.fullest(result.after()))), List.of(), List.of()));
        measured.ifPresent(m -> parts.add(m.part()));
        measured.ifPresent(m -> parts.add(new CommandPage.Part("By the model's path", List.of(MODEL_PATH), List.of(), List.of())));
        parts.addAll(facts.parts());
        parts.add(port.part());
        return new CommandPage(head, parts);
    }
}
