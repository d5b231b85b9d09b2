package quietband.report.motion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import quietband.demand.ResidualDemand;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.motion.run.Dwell;
import quietband.motion.run.SineSweep;
import quietband.motion.run.SweepCoverage;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.file.StackTables;
import quietband.report.page.Report;
import quietband.study.motion.SweepStudy;

/** A sweep: response and coverage in the columns of an assessment, a page that opens with the band strip. */
public final class SweepReport {

    private static final double PPB = 1e9;
    private final Design design;
    private final SineSweep.Request request;
    private final SineSweep.Result result;
    private final SweepStudy study;

    private SweepReport(SweepStudy study) {
        this.study = study;
        this.design = study.design();
        this.request = study.request();
        this.result = study.result();
    }

    /** The report. */
    public static Report of(SweepStudy study, Provenance from) {
        return new SweepReport(study).report(from);
    }

    private Report report(Provenance from) {
        Report report = new Report(design.title(), from).of(design);
        report.table("response.csv", StackTables.responseColumns(result.stacks()), result.points(), (csv, p) -> {
            csv.cell(p.frequencyHz());
            for (int s = 0; s < result.stacks().size(); s++) {
                csv.cells(PPB, p.residual()[s]).cell(p.vector(s) * PPB);
            }
        });
        report.table("coverage.csv", StackTables.COVERAGE, csv -> {
            for (SweepCoverage b : result.bands()) {
                StackTables.coverage(csv, b.stack(), b.intervals());
            }
        });
        report.summary(this::fields);
        report.line(report.title()).line(what().replace("; ", "\n")).line("");
        result.bands().forEach(b -> report.line("%-10s worst %10s ppb/g at %-10s within: %s", b.stack().key(),
            QuantityText.ppb(b.worstPerG()), QuantityText.hz(b.worstHz()), within(b)));
        report.line("").line(agreement()).line(events()).wrapped().head("SWEEP", "none", agreement());
        String strip = SweepMarginStrip.svg(design, result);
        if (!strip.isEmpty()) {
            report.part("Margin over the band, by the equations of motion").say(NumberFormat.text(
                "Drive %.4g g peak%s. Above the line: within the limit; below: over it; full height 20 dB.", request.peakG(),
                request.linear() ? ", linear" : "")).inline(strip);
        }
        report.part("Coverage").say(what(), agreement(), events()).table("Where each stack stays within the limit", List.of("stack",
            "within", "share", "worst, ppb/g", "at"), result.bands().stream().map(b -> List.of(b.stack().key(), within(b),
            b.asked() ? NumberFormat.brief(100 * b.share(), 3) + " %" : "-", QuantityText.ppb(b.worstPerG()),
            QuantityText.hz(b.worstHz()))).toList());
        report.part("Residual").charts(charts());
        return report;
    }

    private static String within(SweepCoverage b) {
        return b.asked() ? QuantityText.ranges(b.intervals(), "nowhere") : "no limit stated";
    }

    private String agreement() {
        String off = NumberFormat.text("%.2g dB", study.worstDb());
        if (study.worstDb() < 0.1) {
            return "Time and frequency domain agree: they differ by " + off + " at most over the table.";
        }
        return request.linear() ? "Time and frequency domain do NOT agree: they differ by up to " + off + "."
            : "At this level the motion differs from the linear prediction by up to " + off
                + ": what clipping, slack, stops and curvature change.";
    }

    private Stream<Dwell.Result> findings() {
        return result.points().stream().flatMap(p -> p.findings().stream());
    }

    private long clipped(int which) {
        return findings().mapToLong(d -> d.clipped()[which]).sum();
    }

    private String events() {
        long touching = result.points().stream().filter(p -> p.findings().stream()
            .anyMatch(d -> d.contacts().stream().anyMatch(c -> c.times() > 0))).count();
        long unsettled = result.points().stream().filter(p -> !p.findings().stream().allMatch(Dwell.Result::settled)).count();
        return NumberFormat.text("Stops are touched or springs go slack at %d of %s; %d sensor samples and %d port "
            + "values are clipped%s.", touching, QuantityText.count(result.points().size(), "frequency"), clipped(0), clipped(1),
            unsettled > 0 ? "; at " + QuantityText.count(unsettled, "frequency")
                + " the motion does not become periodic" : "");
    }

    private void fields(Json json) {
        json.field("title", design.title()).field("drive", "sweep").field("peak_g", request.peakG()).field("linear", request.linear())
            .field("octaves_per_minute", request.octavesPerMinute());
        json.items("axes", request.axes().stream().map(Axis::letter).toList());
        json.field("dwells", result.dwells()).field("simulated_s", result.simulated())
            .field("real_time_factor", result.simulated() / study.elapsed());
        json.object("stacks", () -> result.bands().forEach(b -> json.object(b.stack().key(), () -> {
            json.object("worst", () -> json.field("frequency_hz", b.worstHz()).field("residual_ppb_per_g", b.worstPerG() * PPB));
            json.object("coverage", () -> json.field("share", b.share()).pairs("intervals_hz", b.intervals()));
        })));
        MotionTables.contacts(json, findings().flatMap(d -> d.contacts().stream()).toList());
        json.field("clipped_samples", clipped(0)).field("clipped_port_samples", clipped(1))
            .field("largest_difference_db", study.worstDb()).field("agreement", agreement());
    }

    private List<FrequencyChart> charts() {
        double[] f = result.points().stream().mapToDouble(SineSweep.Point::frequencyHz).toArray();
        return f.length < 2 ? List.of() : request.axes().stream().map(a -> chart(a, f)).toList();
    }

    private FrequencyChart chart(Axis a, double[] f) {
        List<ChartLine> lines = new ArrayList<>();
        for (int s = 0; s < result.stacks().size(); s++) {
            int at = s;
            lines.add(new ChartLine(result.stacks().get(s).key(), f, result.points().stream()
                .mapToDouble(p -> PPB * p.residual()[at][a.ordinal()]).toArray(), ChartStyle.of(result.stacks().get(s))));
        }
        ResidualDemand demand = new ResidualDemand(design);
        if (demand.asked()) {
            lines.add(new ChartLine("limit", f, Arrays.stream(f).map(v -> PPB * demand.limit(a.ordinal(), v)).toArray(), ChartStyle.LIMIT));
        }
        return new FrequencyChart("chart-sweep-" + a.letter(), "Residual found by the sweep along " + a.letter(),
            "residual " + a.letter() + ", ppb/g", f[0], f[f.length - 1], FrequencyChart.Scale.decades(lines, 4), lines);
    }

    private String what() {
        return NumberFormat.text("%d dwells on %s, %.6g g peak, %s; %.4g s simulated, %.3g times real time.",
            result.dwells(), String.join(", ", request.axes().stream().map(Axis::letter).toList()), request.peakG(),
            request.linear() ? "linear" : "nonlinear parts act", result.simulated(), result.simulated() / study.elapsed());
    }
}
