package quietband.report.fit;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import quietband.identification.fit.FitResult;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.Provenance;
import quietband.report.page.Report;

/** A fit: the changed model, tables, charts, a page, a summary, a text. */
public final class FitReport {

    private FitReport() { }

    /** The report. */
    public static Report of(FitResult fit, Provenance from) {
        String title = fit.before().design().title();
        Report report = new Report((title.isEmpty() ? from.input() : title) + ", fitted", from).of(fit.after().design());
        report.model("", fit.after().bundle());
        report.table("values.csv", "of,unit,before,value,standard_error,low_95,high_95,state", fit.values(), (table, v) ->
            table.cell(v.of()).cell(FitText.unit(v)).cell(FitText.in(v, v.before())).cell(FitText.in(v, v.value()))
                .cell(FitText.in(v, v.standardError())).cell(FitText.in(v, v.low())).cell(FitText.in(v, v.high()))
                .cell(FitText.state(v)));
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; i < fit.values().size(); i++) {
            for (int j = 0; j < i; j++) {
                pairs.add(new Pair(fit.values().get(j).of(), fit.values().get(i).of(), fit.correlation()[i][j]));
            }
        }
        report.table("correlation.csv", "first,second,correlation", pairs, (table, p) -> table.cell(p.first).cell(p.second)
            .cell(p.correlation));
        report.table("fit.csv", List.of("file", "quantity", "axis", "frequency_hz", "measured", "measured_phase_deg", "before",
            "before_phase_deg", "after", "after_phase_deg", "standard_error", "magnitude_residual", "phase_residual", "left_out"),
            table -> points(table, fit));
        if (!fit.modes().isEmpty()) {
            report.table("modes.csv", "shape,before_hz,frequency_hz,frequency_standard_error_hz,before_damping_ratio,damping_ratio,"
                + "damping_ratio_standard_error", fit.modes(), (table, m) -> table.cell(m.shape()).cell(m.beforeHz()).cell(m.afterHz())
                .cell(m.errorHz()).cell(m.beforeRatio()).cell(m.afterRatio()).cell(m.errorRatio()));
        }
        report.summary(json -> fields(json, fit, pairs));
        FitText.say(report, fit, title.isEmpty() ? from.input() : title);
        return report;
    }

    /** Correlation of the errors of two values. */
    private record Pair(String first, String second, double correlation) { }

    private static void points(CsvWriter table, FitResult fit) throws IOException {
        for (FitResult.Curve c : fit.curves()) {
            double unit = c.kind().perG() ? 1e9 : 1;
            for (FitResult.Point p : c.points()) {
                table.cell(c.file()).cell(FitText.quantity(c)).cell(c.axis().letter()).cell(p.frequencyHz());
                for (FitResult.Phasor v : List.of(p.measured(), p.before(), p.after())) {
                    table.cell(unit * v.magnitude()).cell(Math.toDegrees(v.phase()));
                }
                table.cell(unit * p.error()).cell(p.magnitude()).cell(p.phase()).yes(p.outlier()).end();
            }
        }
    }

    private static void fields(Json json, FitResult fit, List<Pair> pairs) {
        json.items("measured", fit.curves().stream().map(FitResult.Curve::file).distinct().toList());
        json.objects("values", fit.values(), v -> value(json, v));
        json.objects("correlations", pairs, p -> json.items("between", List.of(p.first, p.second)).field("coefficient", p.correlation));
        FitResult.Quality q = fit.quality();
        json.object("quality", () -> json.field("numbers", q.numbers()).field("outliers", q.outliers())
            .field("reduced_chi_square", q.chiSquare()).field("relative_rms_before", q.rmsBefore())
            .field("relative_rms_after", q.rmsAfter()).field("aicc", q.aicc()).field("bic", q.bic()));
        json.items("noise", fit.curves().stream().map(FitResult.Curve::noise).toList());
        json.objects("damping", fit.kinds(), k -> json.field("kind", k.kind().words()).field("aicc", k.aicc()).field("bic", k.bic())
            .field("taken", k.taken()).objects("values", k.values(), v -> value(json, v)));
        json.objects("modes", fit.modes(), m -> json.field("shape", m.shape()).field("frequency_hz", m.afterHz())
            .field("frequency_standard_error_hz", m.errorHz()).field("damping_ratio", m.afterRatio())
            .field("damping_ratio_standard_error", m.errorRatio()).field("before_hz", m.beforeHz())
            .field("before_damping_ratio", m.beforeRatio()));
        json.items("warnings", fit.notes());
    }

    private static void value(Json json, FitResult.Value v) {
        json.field("of", v.of()).field("value", FitText.in(v, v.value())).field("unit", FitText.unit(v))
            .field("standard_error", FitText.in(v, v.standardError())).field("low_95", FitText.in(v, v.low()))
            .field("high_95", FitText.in(v, v.high())).field("before", FitText.in(v, v.before())).field("state", FitText.state(v));
    }
}
