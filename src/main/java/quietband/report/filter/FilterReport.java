package quietband.report.filter;

import java.util.List;
import quietband.demand.ResidualPoint;
import quietband.filter.FilteredResidual;
import quietband.filter.design.FilterResult;
import quietband.model.Design;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.page.Report;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.StackVerdict;
import quietband.study.filter.FilterDesign;
import quietband.study.filter.ResidualChange;

/** The design of digital filters: the changed model with them, tables, charts, page, summary, text. */
public final class FilterReport {

    private static final String MODEL_PATH = "What follows is by the model's own path, not by the measured one.";

    private FilterReport() { }

    /** The report. */
    public static Report of(FilterDesign d, Provenance from) {
        FilterResult r = d.result();
        Report report = new Report(r.changed().title(), from).of(r.changed());
        report.model("", d.changed().bundle());
        report.summary(json -> {
            fields(json, d);
            d.measured().ifPresent(m -> json.object("with_measured_response", () -> {
                ResidualText.worst(json, "residual_before", m.before().worst());
                ResidualText.worst(json, "residual_after", m.after().worst());
            }));
            PortReport.fields(json, d.port());
            FactsReport.fields(json, d);
        });
        List<String> sentences = List.of(sentence("before", r.before()), sentence("after", r.after()));
        report.line(report.title()).origin().line("").lines(sentences).line("");
        d.sensors().forEach(s -> report.line("filter %s: largest coefficient %s, peak gain %s", s.axis().letter(),
            NumberFormat.brief(s.largest(), 5), peak(s)));
        d.measured().ifPresent(m -> report.line("with the measured response: before " + ResidualText.sentence(m.before().worst())
            + ", after " + ResidualText.sentence(m.after().worst())).line("the two lines on top are those of the model's own path, which "
            + "is not the measured one; fit --measured path brings the model to it"));
        report.line(PortReport.line(d.port()));
        d.measured().ifPresent(m -> report.line(MODEL_PATH));
        report.head("FILTER", "none", d.measured().map(m -> "with the measured response, after: "
            + ResidualText.sentence(m.after().worst())).orElse(sentences.get(1)));
        report.part("Residual").say(sentences);
        d.measured().ifPresent(m -> measured(report, r.task().design(), m));
        FactsReport.say(report, d);
        PortReport.say(report, r.changed().requirement(), d.port());
        report.line("");
        return report;
    }

    private static void measured(Report report, Design design, ResidualChange m) {
        report.table("measured.csv", List.of("filter", "frequency_hz", "x_ppb_per_g", "y_ppb_per_g", "z_ppb_per_g"), csv -> {
            for (FilteredResidual each : List.of(m.before(), m.after())) {
                for (FilteredResidual.Row row : each.rows()) {
                    csv.cell(each.equals(m.before()) ? "before" : "after").cell(row.frequencyHz()).cells(1e9, row.perG()).end();
                }
            }
        });
        report.part("With the measured response").say("The filter was designed for the measured response from sensor to frequency; the "
            + "model cannot hold it, so model.yaml and the lines above show its own path with this filter. Before: "
            + ResidualText.sentence(m.before().worst()) + "; after: " + ResidualText.sentence(m.after().worst()) + ".")
            .charts(ResidualText.charts("chart-measured-", " with the measured response", design.requirement(), m));
        report.part("By the model's path").say(MODEL_PATH);
    }

    static String peak(FilterDesign.SensorFilter s) {
        return NumberFormat.text("%.2f dB at %s", decibels(s.peak().gain()), QuantityText.hz(s.peak().frequencyHz()));
    }

    private static String sentence(String when, Assessment a) {
        StackVerdict v = FilterResult.fullest(a);
        ResidualPoint w = v.worst();
        return NumberFormat.text("%-7s worst %s ppb/g at %s, axis %s%s", when + ":", QuantityText.ppb(w.residualPerG()),
            QuantityText.hz(w.frequencyHz()), w.axis(), v.asked() ? ", margin " + QuantityText.db(w.marginDb()) : "");
    }

    private static void fields(Json json, FilterDesign d) {
        FilterResult r = d.result();
        json.field("form", r.task().form().key()).field("count", r.task().count()).field("goal", r.task().goal().key())
            .field("max_gain_db", decibels(r.task().maxGain()));
        json.object("residual_before", () -> verdict(json, FilterResult.fullest(r.before())));
        json.object("residual_after", () -> verdict(json, FilterResult.fullest(r.after())));
        json.field("noise_gain_db", 10 * StrictMath.log10(d.sensors().stream().mapToDouble(FilterDesign.SensorFilter::noiseGain).max()
            .orElse(0)));
        json.object("sum_of_squares", () -> json.field("points", r.task().grid().length).field("norm_ppb_per_g", r.found().norm() * 1e9)
            .field("norm_without_bound_ppb_per_g", r.found().normUnbounded() * 1e9));
        json.field("value", r.found().value()).field("value_with_6_db_more_gain", r.found().relaxed());
        json.object("filters", () -> d.sensors().forEach(s -> json.object(s.axis().letter(), () ->
            json.field("largest_coefficient", s.largest()).field("peak_gain_db", decibels(s.peak().gain()))
                .field("peak_gain_frequency_hz", s.peak().frequencyHz())
                .field("noise_gain_db", 10 * StrictMath.log10(s.noiseGain())))));
    }

    static void verdict(Json json, StackVerdict v) {
        ResidualPoint w = v.worst();
        json.field("worst_ratio", FilterResult.worstRatio(v)).field("stack", v.stack().key())
            .field("frequency_hz", w.frequencyHz()).field("axis", w.axis()).field("residual_ppb_per_g", w.residualPerG() * 1e9)
            .field("limit_ppb_per_g", w.limitPerG() * 1e9).field("margin_db", w.marginDb());
    }

    static double decibels(double ratio) {
        return 20 * StrictMath.log10(ratio);
    }
}
