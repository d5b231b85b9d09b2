package quietband.report.motion;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.demand.ResidualDemand;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.motion.platform.ContactRecord;
import quietband.motion.run.Dwell;
import quietband.motion.run.SineSweep;
import quietband.motion.run.SweepCoverage;
import quietband.report.assess.AssessmentSources;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
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
import quietband.report.page.StackName;
import quietband.response.ResidualResponse;

/** What a sweep writes: response and coverage in the columns of an assessment, a page that opens with the band strip. */
public final class SweepFiles {

    private static final double PPB = 1e9;

    private final Design design;
    private final String title;
    private final SineSweep.Request request;
    private final SineSweep.Result result;
    private final double elapsed;
    private final Provenance from;

    /**
     * For a sweep that has been run.
     *
     * @param elapsed time it took, s
     */
    public SweepFiles(Design design, SineSweep.Request request, SineSweep.Result result, double elapsed, Provenance from) {
        this.design = design;
        this.title = design.title().isEmpty() ? from.input() : design.title();
        this.request = request;
        this.result = result;
        this.elapsed = elapsed;
        this.from = from;
    }

    /** Writes all files. */
    public void writeTo(ResultDirectory directory) {
        directory.write("response.csv", this::response);
        directory.write("coverage.csv", this::coverage);
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
        List<FrequencyChart> charts = charts();
        List<String> svgs = charts.stream().map(FrequencyChart::svg).toList();
        for (int i = 0; i < svgs.size(); i++) {
            String svg = svgs.get(i);
            directory.write(charts.get(i).name() + ".svg", w -> w.write(svg));
        }
        String page = PageTemplates.page(page(svgs));
        directory.write("report.html", w -> w.write(page));
    }

    private void response(Writer writer) throws IOException {
        List<String> header = new ArrayList<>(List.of("frequency_hz"));
        for (Stack s : result.stacks()) {
            for (String of : List.of("x", "y", "z", "vector")) {
                header.add(s.key() + "_" + of + "_ppb_per_g");
            }
        }
        CsvWriter csv = new CsvWriter(writer, header);
        for (SineSweep.Point p : result.points()) {
            csv.cell(p.frequencyHz());
            for (int s = 0; s < result.stacks().size(); s++) {
                for (double y : p.residual()[s]) {
                    csv.cell(y * PPB);
                }
                csv.cell(p.vector(s) * PPB);
            }
            csv.end();
        }
    }

    private void coverage(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "stack", "from_hz", "to_hz");
        for (SweepCoverage b : result.bands()) {
            for (double[] i : b.intervals()) {
                csv.cell(b.stack().key()).cell(i[0]).cell(i[1]).end();
            }
        }
    }

    /** Largest |dB| between the two roads over the table wherever the prediction is above 1 % of the bare sensitivity. */
    private double worstDb() {
        ResidualResponse response = new ResidualResponse(design);
        double[] re = new double[3];
        double[] im = new double[3];
        double worst = 0;
        for (SineSweep.Point p : result.points()) {
            response.at(p.frequencyHz());
            for (int s = 0; s < result.stacks().size(); s++) {
                response.residual(result.stacks().get(s), re, im);
                for (Axis a : request.axes()) {
                    double predicted = Math.hypot(re[a.ordinal()], im[a.ordinal()]);
                    if (predicted > 0.01 * response.scale()) {
                        worst = Math.max(worst, Math.abs(20 * Math.log10(p.residual()[s][a.ordinal()] / predicted)));
                    }
                }
            }
        }
        return worst;
    }

    private String agreement() {
        double worst = worstDb();
        String off = String.format(Locale.ROOT, "%.2g dB", worst);
        if (worst < 0.1) {
            return "Both roads agree: time domain and frequency domain differ by " + off + " at most over the table.";
        }
        return request.linear() ? "The roads do NOT agree: they differ by up to " + off + "."
            : "At this level the motion differs from the linear prediction by up to " + off
                + ": what clipping, slack, stops and curvature change.";
    }

    private List<ContactRecord> contacts() {
        return result.points().stream().flatMap(p -> p.findings().stream()).flatMap(d -> d.contacts().stream()).toList();
    }

    private long clipped(int which) {
        return result.points().stream().flatMap(p -> p.findings().stream()).mapToLong(d -> d.clipped()[which]).sum();
    }

    private String events() {
        long touching = result.points().stream().filter(p -> p.findings().stream()
            .anyMatch(d -> d.contacts().stream().anyMatch(c -> c.times() > 0))).count();
        long unsettled = result.points().stream().filter(p -> !p.findings().stream().allMatch(Dwell.Result::settled)).count();
        return String.format(Locale.ROOT, "Stops are touched or springs go slack at %d of %d frequencies; %d sensor samples and %d port "
            + "values are clipped%s.", touching, result.points().size(), clipped(0), clipped(1),
            unsettled > 0 ? "; at " + unsettled + " frequencies the motion does not become periodic" : "");
    }

    /** The summary. */
    public String json() {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("title", design.title()).field("drive", "sweep").field("peak_g", request.peakG())
                .field("linear", request.linear()).field("octaves_per_minute", request.octavesPerMinute());
            json.array("axes", () -> request.axes().forEach(a -> json.item(a.letter())));
            json.field("dwells", result.dwells()).field("simulated_s", result.simulated())
                .field("real_time_factor", result.simulated() / elapsed);
            json.object("stacks", () -> result.bands().forEach(b -> json.object(b.stack().key(), () -> {
                json.object("worst", () -> json.field("frequency_hz", b.worstHz()).field("residual_ppb_per_g", b.worstPerG() * PPB));
                json.object("coverage", () -> {
                    json.field("share", b.share());
                    json.array("intervals_hz", () -> b.intervals().forEach(i -> json.pair(i[0], i[1])));
                });
            })));
            MotionTables.contacts(json, contacts());
            json.field("clipped_samples", clipped(0)).field("clipped_port_samples", clipped(1));
            json.field("largest_difference_db", worstDb()).field("agreement", agreement());
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    private List<FrequencyChart> charts() {
        List<FrequencyChart> charts = new ArrayList<>();
        ResidualDemand demand = new ResidualDemand(design);
        double[] f = result.points().stream().mapToDouble(SineSweep.Point::frequencyHz).toArray();
        if (f.length < 2) {
            return charts;
        }
        for (Axis a : request.axes()) {
            List<ChartLine> lines = new ArrayList<>();
            for (int s = 0; s < result.stacks().size(); s++) {
                int at = s;
                lines.add(new ChartLine(StackName.of(result.stacks().get(s)), f,
                    result.points().stream().mapToDouble(p -> PPB * p.residual()[at][a.ordinal()]).toArray(),
                    ChartStyle.of(result.stacks().get(s))));
            }
            if (demand.asked()) {
                double[] line = new double[f.length];
                for (int i = 0; i < f.length; i++) {
                    line[i] = PPB * demand.limit(a.ordinal(), f[i]);
                }
                lines.add(new ChartLine("limit", f, line, ChartStyle.LIMIT));
            }
            charts.add(new FrequencyChart("chart-sweep-" + a.letter(), "Residual found by the sweep along " + a.letter(),
                "residual " + a.letter() + ", ppb/g", f[0], f[f.length - 1], FrequencyChart.Scale.decades(lines, 4), lines));
        }
        return charts;
    }

    private CommandPage page(List<String> svgs) {
        PageHead head = new PageHead(title, "SWEEP", "none", agreement(), from, AssessmentSources.today());
        List<List<String>> rows = new ArrayList<>();
        for (SweepCoverage b : result.bands()) {
            rows.add(List.of(StackName.of(b.stack()), b.asked() ? QuantityText.ranges(b.intervals(), "nowhere") : "no limit asked",
                b.asked() ? NumberFormat.brief(100 * b.share(), 3) + " %" : "-", QuantityText.ppb(b.worstPerG()),
                QuantityText.hz(b.worstHz())));
        }
        String strip = SweepMarginStrip.svg(design, result);
        List<CommandPage.Part> parts = new ArrayList<>();
        if (!strip.isEmpty()) {
            parts.add(new CommandPage.Part("Margin over the band, by the equations of motion", List.of(String.format(Locale.ROOT,
                "Drive %.4g g peak%s. Above the line: within the limit; below: over it; full height 20 dB.", request.peakG(),
                request.linear() ? ", linear" : "")), List.of(), List.of(strip)));
        }
        parts.add(new CommandPage.Part("Coverage", List.of(what(), agreement(), events()), List.of(new PageTable(
            "Where each stack stays within the limit", List.of("stack", "within", "share", "worst, ppb/g", "at"), rows)), List.of()));
        parts.add(new CommandPage.Part("Residual", List.of(), List.of(), svgs));
        return new CommandPage(head, parts);
    }

    private String what() {
        return String.format(Locale.ROOT, "%d dwells on %s, %.6g g peak, %s; %.4g s simulated, %.3g times real time.",
            result.dwells(), String.join(", ", request.axes().stream().map(Axis::letter).toList()), request.peakG(),
            request.linear() ? "linear" : "nonlinear parts act", result.simulated(), result.simulated() / elapsed);
    }

    /** The summary for a terminal, at most 80 columns wide. */
    public String text() {
        StringBuilder out = new StringBuilder(title + "\n" + what().replace("; ", "\n") + "\n\n");
        for (SweepCoverage b : result.bands()) {
            out.append(String.format(Locale.ROOT, "%-10s worst %10s ppb/g at %-10s within: %s%n", b.stack().key(),
                QuantityText.ppb(b.worstPerG()), QuantityText.hz(b.worstHz()),
                b.asked() ? QuantityText.ranges(b.intervals(), "nowhere") : "no limit asked"));
        }
        out.append('\n').append(agreement()).append('\n').append(events()).append('\n').append(Caution.PREDICTION).append('\n');
        return MotionTables.wrapped(out.toString());
    }
}
