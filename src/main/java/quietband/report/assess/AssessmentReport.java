package quietband.report.assess;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import quietband.model.Axis;
import quietband.model.Stack;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Provenance;
import quietband.report.file.StackTables;
import quietband.report.page.PageTemplates;
import quietband.report.page.Report;
import quietband.response.Contribution;
import quietband.response.FrequencyTable;
import quietband.response.ModeProperties;
import quietband.response.travel.Travel;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.StackVerdict;
import quietband.response.verdict.ToneSideband;
import quietband.study.assess.DesignAssessment;
import quietband.work.BackgroundParts;

/** A design assessed: tables, summary, charts, page and text. */
public final class AssessmentReport {

    private static final double PPB = 1e9;
    private static final double MM = 1e3;

    private AssessmentReport() { }

    /** The report; a thread beside begins to draw its charts. */
    public static Report of(DesignAssessment study, Provenance from) {
        Assessment a = study.assessment();
        List<FrequencyChart> charts = new AssessmentCharts(a.design(), study.curves()).all();
        BackgroundParts<String> drawn = BackgroundParts.on("charts", charts.stream().<Supplier<String>>map(c -> c::svg).toList());
        Report report = new Report(a.design().title(), from);
        tables(report, study);
        for (int i = 0; i < charts.size(); i++) {
            int at = i;
            report.file(charts.get(i).name() + ".svg", w -> w.write(drawn.finish().get(at)));
        }
        report.page(() -> PageTemplates.render("assess.jte", AssessmentView.of(study, from, pictures(charts, drawn.finish()))));
        report.summary(json -> AssessmentSummary.fields(json, study));
        AssessmentText.say(report, a);
        return report;
    }

    private static Map<String, String> pictures(List<FrequencyChart> charts, List<String> svgs) {
        Map<String, String> pictures = new LinkedHashMap<>();
        for (int i = 0; i < svgs.size(); i++) {
            pictures.put(charts.get(i).name(), svgs.get(i));
        }
        return pictures;
    }

    private static void tables(Report report, DesignAssessment study) {
        Assessment a = study.assessment();
        FrequencyTable table = study.table();
        List<Stack> stacks = table.stacks();
        // the largest first, so that it is written beside the others
        report.table("contributions.csv", List.of("frequency_hz", "axis", "cause", "alone_ppb_per_g", "without_ppb_per_g"),
            csv -> contributions(csv, table));
        report.table("response.csv", StackTables.responseColumns(stacks), csv -> response(csv, table));
        report.table("coverage.csv", StackTables.COVERAGE, csv -> {
            for (StackVerdict v : a.verdicts()) {
                StackTables.coverage(csv, v.stack(), v.intervals());
            }
        });
        report.table("phase_noise.csv", columns(List.of("offset_hz", "axis"), stacks, "_vibration_dbc_hz", "_total_dbc_hz",
            List.of("static_dbc_hz", "sensor_dbc_hz", "tuning_dbc_hz", "limit_dbc_hz", "allowed_ppb_per_g")), csv -> noise(csv, table));
        report.table("tones.csv", columns(List.of("tone", "frequency_hz", "axis", "peak_g"), stacks, "_index_rad", "_level_dbc",
            List.of("limit_dbc")), csv -> tones(csv, a, stacks));
        report.table("modes.csv",
            "mode,frequency_hz,damping_ratio,shape,translation_x_share,translation_y_share,translation_z_share,rotation_x_share,"
            + "rotation_y_share,rotation_z_share", IntStream.range(0, a.modes().size()).boxed().toList(), (csv, n) -> {
                ModeProperties m = a.modes().get(n);
                csv.whole(n + 1).cell(m.frequencyHz()).cell(m.dampingRatio()).cell(m.shape()).cells(1, m.energyShares());
            });
        report.table("travel.csv", "axis,sag_mm,sustained_mm,shock_mm,random_3sigma_mm,counted_mm,clearance_mm",
            a.travel().isEmpty() ? List.<Axis>of() : Axis.ALL, (csv, axis) -> {
                Travel t = a.travel().orElseThrow();
                double clearance = a.design().platform().orElseThrow().clearance().map(c -> c.get(axis)).orElse(Double.NaN);
                csv.cell(axis.letter()).cells(MM, t.sag().get(axis), t.sustained().get(axis), t.shock().get(axis),
                    t.random3Sigma().get(axis), t.counted().get(axis), clearance);
            });
    }

    private static List<String> columns(List<String> first, List<Stack> stacks, String one, String two, List<String> last) {
        return Stream.of(first.stream(), stacks.stream().flatMap(s -> Stream.of(s.key() + one, s.key() + two)), last.stream())
            .flatMap(s -> s).toList();
    }

    private static void response(CsvWriter csv, FrequencyTable table) throws IOException {
        for (FrequencyTable.Row r : table.rows()) {
            csv.cell(r.frequencyHz());
            for (int s = 0; s < table.stacks().size(); s++) {
                csv.cells(PPB, r.residualPerG()[s]).cell(r.vectorPerG(s) * PPB);
            }
            csv.end();
        }
    }

    private static void noise(CsvWriter csv, FrequencyTable table) throws IOException {
        for (FrequencyTable.Row r : table.rows()) {
            for (int k = 0; k < table.noiseRows().size(); k++) {
                csv.cell(r.frequencyHz()).cell(table.noiseRows().get(k).label());
                for (int s = 0; s < table.stacks().size(); s++) {
                    csv.cell(dbc(r.vibration()[s][k])).cell(dbc(r.vibration()[s][k] + r.floor()[s]));
                }
                csv.cell(dbc(r.staticNoise())).cell(dbc(r.sensor())).cell(dbc(r.tuning())).cell(r.limitDbc())
                    .cell(r.allowedPerG()[k] * PPB).end();
            }
        }
    }

    private static double dbc(double power) {
        return 10 * StrictMath.log10(power);
    }

    private static void tones(CsvWriter csv, Assessment a, List<Stack> stacks) throws IOException {
        for (ToneSideband t : a.tones()) {
            csv.cell(t.name()).cell(t.frequencyHz()).cell(t.axis().letter()).cell(t.peakG());
            stacks.forEach(s -> csv.cell(t.index().get(s)).cell(t.levelDbc().get(s)));
            csv.cell(t.limitDbc()).end();
        }
    }

    private static void contributions(CsvWriter csv, FrequencyTable table) throws IOException {
        for (FrequencyTable.Row r : table.rows()) {
            for (Axis a : Axis.ALL) {
                for (Contribution c : r.contributions()) {
                    csv.cell(r.frequencyHz()).cell(a.letter()).cell(c.cause().key())
                        .cell(c.alone()[a.ordinal()] * PPB).cell(c.without()[a.ordinal()] * PPB).end();
                }
            }
        }
    }
}
