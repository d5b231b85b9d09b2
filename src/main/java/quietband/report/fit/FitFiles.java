package quietband.report.fit;

import java.io.IOException;
import java.io.Writer;
import java.util.List;
import quietband.identification.fit.FitResult;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.page.Caution;
import quietband.report.page.PageTemplates;
import quietband.report.tolerance.ToleranceFiles;

/** What a fit writes: the changed model, tables, charts, a page, a summary, a text. */
public final class FitFiles {

    private final FitResult fit;
    private final Provenance from;

    /** For a finished fit. */
    public FitFiles(FitResult fit, Provenance from) {
        this.fit = fit;
        this.from = from;
    }

    /** Writes all files. */
    public void writeTo(ResultDirectory directory) {
        ToleranceFiles.write(directory, "", fit.after().bundle());
        directory.write("values.csv", this::values);
        directory.write("correlation.csv", this::correlation);
        directory.write("fit.csv", this::points);
        if (!fit.modes().isEmpty()) {
            directory.write("modes.csv", this::modes);
        }
        List<FrequencyChart> charts = FitCharts.of(fit);
        List<String> svgs = charts.stream().map(FrequencyChart::svg).toList();
        for (int i = 0; i < svgs.size(); i++) {
            String svg = svgs.get(i);
            directory.write(charts.get(i).name() + ".svg", w -> w.write(svg));
        }
        String page = PageTemplates.page(FitPage.of(fit, from, svgs));
        directory.write("report.html", w -> w.write(page));
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
    }

    private void values(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "of", "unit", "before", "value", "standard_error", "low_95", "high_95", "state");
        for (FitResult.Value v : fit.values()) {
            csv.cell(v.of()).cell(FitText.unit(v)).cell(FitText.in(v, v.before())).cell(FitText.in(v, v.value()))
                .cell(FitText.in(v, v.standardError())).cell(FitText.in(v, v.low())).cell(FitText.in(v, v.high()))
                .cell(FitText.state(v)).end();
        }
    }

    private void correlation(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "first", "second", "correlation");
        for (int i = 0; i < fit.values().size(); i++) {
            for (int j = 0; j < i; j++) {
                csv.cell(fit.values().get(j).of()).cell(fit.values().get(i).of()).cell(fit.correlation()[i][j]).end();
            }
        }
    }

    private void points(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "file", "quantity", "axis", "frequency_hz", "measured", "measured_phase_deg", "before",
            "before_phase_deg", "after", "after_phase_deg", "standard_error", "magnitude_residual", "phase_residual", "left_out");
        for (FitResult.Curve c : fit.curves()) {
            double unit = c.kind().perG() ? 1e9 : 1;
            for (FitResult.Point p : c.points()) {
                csv.cell(c.file()).cell(FitText.quantity(c)).cell(c.axis().letter()).cell(p.frequencyHz());
                for (FitResult.Phasor v : List.of(p.measured(), p.before(), p.after())) {
                    csv.cell(unit * v.magnitude()).cell(Math.toDegrees(v.phase()));
                }
                csv.cell(unit * p.error()).cell(p.magnitude()).cell(p.phase()).cell(p.outlier() ? "yes" : "no").end();
            }
        }
    }

    private void modes(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "shape", "before_hz", "frequency_hz", "frequency_standard_error_hz", "before_damping_ratio",
            "damping_ratio", "damping_ratio_standard_error");
        for (FitResult.Mode m : fit.modes()) {
            csv.cell(m.shape()).cell(m.beforeHz()).cell(m.afterHz()).cell(m.errorHz()).cell(m.beforeRatio()).cell(m.afterRatio())
                .cell(m.errorRatio()).end();
        }
    }

    /** The summary. */
    public String json() {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.array("measured", () -> fit.curves().stream().map(FitResult.Curve::file).distinct().forEach(json::item));
            json.array("values", () -> fit.values().forEach(v -> value(json, v)));
            json.array("correlations", () -> correlations(json));
            FitResult.Quality q = fit.quality();
            json.object("quality", () -> json.field("numbers", q.numbers()).field("outliers", q.outliers())
                .field("reduced_chi_square", q.chiSquare()).field("relative_rms_before", q.rmsBefore())
                .field("relative_rms_after", q.rmsAfter()).field("aicc", q.aicc()).field("bic", q.bic()));
            json.array("noise", () -> fit.curves().forEach(c -> json.item(c.noise())));
            json.array("damping", () -> fit.kinds().forEach(k -> json.object(() -> {
                json.field("kind", k.kind().words()).field("aicc", k.aicc()).field("bic", k.bic()).field("taken", k.taken());
                json.array("values", () -> k.values().forEach(v -> value(json, v)));
            })));
            json.array("modes", () -> fit.modes().forEach(m -> json.object(() -> json.field("shape", m.shape())
                .field("frequency_hz", m.afterHz()).field("frequency_standard_error_hz", m.errorHz())
                .field("damping_ratio", m.afterRatio()).field("damping_ratio_standard_error", m.errorRatio())
                .field("before_hz", m.beforeHz()).field("before_damping_ratio", m.beforeRatio()))));
            json.array("warnings", () -> fit.notes().forEach(json::item));
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    private static void value(Json json, FitResult.Value v) {
        json.object(() -> json.field("of", v.of()).field("value", FitText.in(v, v.value())).field("unit", FitText.unit(v))
            .field("standard_error", FitText.in(v, v.standardError())).field("low_95", FitText.in(v, v.low()))
            .field("high_95", FitText.in(v, v.high())).field("before", FitText.in(v, v.before())).field("state", FitText.state(v)));
    }

    private void correlations(Json json) {
        for (int i = 0; i < fit.values().size(); i++) {
            for (int j = 0; j < i; j++) {
                String first = fit.values().get(j).of();
                String second = fit.values().get(i).of();
                double c = fit.correlation()[i][j];
                json.object(() -> {
                    json.array("between", () -> json.item(first).item(second));
                    json.field("coefficient", c);
                });
            }
        }
    }

    /** The summary for a terminal. */
    public String text() {
        return FitText.of(fit, from);
    }
}
