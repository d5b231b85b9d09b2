package quietband.report.filter;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import quietband.demand.ResidualDemand;
import quietband.demand.ResidualPoint;
import quietband.filter.FilteredResidual;
import quietband.filter.MeasuredPath;
import quietband.filter.design.FilterResult;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.QuantityText;
import quietband.report.file.ResultDirectory;
import quietband.report.page.CommandPage;

/** What a filter leaves with the measured response it was designed for, which the model does not hold. */
final class MeasuredReport {

    private final Design design;
    private final FilteredResidual before;
    private final FilteredResidual after;

    private MeasuredReport(FilterResult result, MeasuredPath path) {
        design = result.task().design();
        before = FilteredResidual.of(design, path, design.cancellation().orElseThrow().path().filters());
        after = FilteredResidual.of(design, path, result.found().filters());
    }

    /** For a design from a measured response; empty for one from the model's. */
    static Optional<MeasuredReport> of(FilterResult result) {
        return result.task().measured().map(m -> new MeasuredReport(result, m));
    }

    void writeTo(ResultDirectory directory) {
        directory.write("measured.csv", this::table);
        List<FrequencyChart> charts = charts();
        for (FrequencyChart chart : charts) {
            String svg = chart.svg();
            directory.write(chart.name() + ".svg", w -> w.write(svg));
        }
    }

    private void table(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "filter", "frequency_hz", "x_ppb_per_g", "y_ppb_per_g", "z_ppb_per_g");
        for (FilteredResidual each : List.of(before, after)) {
            for (FilteredResidual.Row row : each.rows()) {
                csv.cell(each.equals(before) ? "before" : "after").cell(row.frequencyHz());
                for (double v : row.perG()) {
                    csv.cell(1e9 * v);
                }
                csv.end();
            }
        }
    }

    void fields(Json json) {
        json.object("with_measured_response", () -> {
            worst(json, "residual_before", before.worst());
            worst(json, "residual_after", after.worst());
        });
    }

    static void worst(Json json, String name, ResidualPoint w) {
        json.object(name, () -> json.field("worst_ratio", w.ratio()).field("frequency_hz", w.frequencyHz())
            .field("axis", w.axis()).field("residual_ppb_per_g", 1e9 * w.residualPerG()));
    }

    List<String> lines() {
        return List.of("with the measured response: before " + sentence(before.worst()) + ", after " + sentence(after.worst()),
            "the two lines on top are those of the model's own path, which is not the measured one; fit --measured path brings "
                + "the model to it");
    }

    static String sentence(ResidualPoint w) {
        return String.format(Locale.ROOT, "worst %s ppb/g at %s, axis %s%s", QuantityText.ppb(w.residualPerG()),
            QuantityText.hz(w.frequencyHz()), w.axis(), Double.isNaN(w.ratio()) ? "" : String.format(Locale.ROOT, ", margin %.2f dB",
                -FilterSummary.decibels(w.ratio())));
    }

    /** What stands at the top of the page. */
    String headline() {
        return "with the measured response, after: " + sentence(after.worst());
    }

    CommandPage.Part part() {
        return new CommandPage.Part("With the measured response",
            List.of("The filter was designed for the measured response from sensor to "
            + "frequency; the model cannot hold it, so model.yaml and the lines above show its own path with this filter. Before: "
            + sentence(before.worst()) + "; after: " + sentence(after.worst()) + "."), List.of(),
            charts().stream().map(FrequencyChart::svg).toList());
    }

    private List<FrequencyChart> charts() {
        List<FrequencyChart> charts = new ArrayList<>();
        Requirement r = design.requirement();
        for (Axis axis : Axis.ALL) {
            int j = axis.ordinal();
            List<ChartLine> lines = lines(before, after, j);
            charts.add(new FrequencyChart("chart-measured-" + axis.letter(), "Residual along " + axis.letter()
                + " with the measured response", axis.letter() + ", ppb/g", r.fromHz(), r.toHz(), FrequencyChart.Scale.decades(lines, 5),
                lines));
        }
        return charts;
    }

    /** Residual of an axis before and after, and its limit. */
    static List<ChartLine> lines(FilteredResidual before, FilteredResidual after, int j) {
        List<ChartLine> lines = new ArrayList<>();
        lines.add(line("before", before, w -> w.perG()[j], ChartStyle.NEED_SPRINGS));
        lines.add(line("after", after, w -> w.perG()[j], ChartStyle.of(Stack.COMBINED)));
        ResidualDemand demand = before.demand();
        if (demand.asked() && before.rows().stream().allMatch(w -> Double.isFinite(demand.limit(j, w.frequencyHz())))) {
            lines.add(line("limit", before, w -> demand.limit(j, w.frequencyHz()), ChartStyle.LIMIT));
        }
        return lines;
    }

    private static ChartLine line(String name, FilteredResidual of, ToDoubleFunction<FilteredResidual.Row> value, ChartStyle look) {
        return new ChartLine(name, of.rows().stream().mapToDouble(FilteredResidual.Row::frequencyHz).toArray(),
            of.rows().stream().mapToDouble(w -> 1e9 * value.applyAsDouble(w)).toArray(), look);
    }
}
