package quietband.report.motion;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.motion.run.Dwell;
import quietband.report.assess.AssessmentSources;
import quietband.report.chart.TimeChart;
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

/** What a dwell writes: summary, trace, page, text; the prediction of the frequency domain beside it. */
public final class DwellFiles {

    private static final double PPB = 1e9;
    private static final double SHOWN_PERIODS = 8;
    private static final int HARMONICS = 7;

    private final Design design;
    private final String title;
    private final Dwell.Request request;
    private final Dwell.Traced traced;
    private final Provenance from;

    /** For a dwell that has been run. */
    public DwellFiles(Design design, Dwell.Request request, Dwell.Traced traced, Provenance from) {
        this.design = design;
        this.title = design.title().isEmpty() ? from.input() : design.title();
        this.request = request;
        this.traced = traced;
        this.from = from;
    }

    /** Writes all files. */
    public void writeTo(ResultDirectory directory) {
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
        directory.write("spectrum.csv", this::spectrum);
        directory.write("motion.csv", w -> MotionTables.trace(w, List.of(request.axis().letter()), List.of(traced.trace())));
        String page = PageTemplates.page(page());
        directory.write("report.html", w -> w.write(page));
    }

    /** A line of the spectrum: what it is, and its frequency. */
    private record Line(String name, double frequencyHz) { }

    /** Mean, harmonics, and where what lies above half the sample rate folds to. */
    private List<Line> lines() {
        double f = request.frequencyHz();
        List<Line> lines = new ArrayList<>(List.of(new Line("mean", 0)));
        for (int n = 1; n <= HARMONICS; n++) {
            lines.add(new Line("harmonic " + n, n * f));
        }
        double fs = design.cancellation().map(c -> c.path().sampleRateHz()).orElse(0.0);
        if (fs > 0 && f > fs / 2) {
            lines.add(new Line("folded", Math.abs(f - fs * Math.rint(f / fs))));
        }
        return lines;
    }

    private void spectrum(Writer writer) throws IOException {
        List<String> header = new ArrayList<>(List.of("line", "frequency_hz"));
        traced.result().stacks().forEach(s -> header.add(s.key() + "_peak_ppb"));
        CsvWriter csv = new CsvWriter(writer, header);
        for (Line line : lines()) {
            csv.cell(line.name).cell(line.frequencyHz);
            for (int s = 0; s < traced.result().stacks().size(); s++) {
                csv.cell(traced.trace().line(s, line.frequencyHz) * PPB);
            }
            csv.end();
        }
    }

    private PageTable spectrumGrid() {
        List<String> head = new ArrayList<>(List.of("line", "frequency"));
        traced.result().stacks().forEach(s -> head.add(StackName.of(s) + ", ppb"));
        List<List<String>> rows = new ArrayList<>();
        for (Line line : lines()) {
            List<String> row = new ArrayList<>(List.of(line.name, QuantityText.hz(line.frequencyHz)));
            for (int s = 0; s < traced.result().stacks().size(); s++) {
                row.add(NumberFormat.brief(traced.trace().line(s, line.frequencyHz) * PPB, 3));
            }
            rows.add(row);
        }
        return new PageTable("Lines of the fractional frequency, peak", head, rows);
    }

    /** Predicted |y| and phase in deg of a stack. */
    private double[] predicted(Stack stack) {
        ResidualResponse response = new ResidualResponse(design);
        double[] re = new double[3];
        double[] im = new double[3];
        response.at(request.frequencyHz());
        response.residual(stack, re, im);
        int j = request.axis().ordinal();
        return new double[] {Math.hypot(re[j], im[j]), Math.toDegrees(Math.atan2(im[j], re[j]))};
    }

    /** The summary. */
    public String json() {
        Dwell.Result r = traced.result();
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("title", design.title()).field("drive", "dwell").field("axis", request.axis().letter())
                .field("frequency_hz", request.frequencyHz()).field("peak_g", request.peakG())
                .field("linear", request.linear()).field("simulated_s", r.simulated())
                .field("real_time_factor", r.simulated() / traced.elapsed()).field("settled", r.settled());
            json.object("stacks", () -> r.stacks().forEach(s -> json.object(s.key(), () -> {
                double[] p = predicted(s);
                json.field("sensitivity_ppb_per_g", r.sensitivityPerG(s) * PPB).field("phase_deg", r.phaseDeg(s))
                    .field("predicted_ppb_per_g", p[0] * PPB).field("predicted_phase_deg", p[1])
                    .field("peak_ppb", traced.peak()[r.stacks().indexOf(s)] * PPB)
                    .field("rms_ppb", traced.rms()[r.stacks().indexOf(s)] * PPB);
            })));
            json.object("travel", () -> Axis.ALL.forEach(a ->
                json.object(a.letter(), () -> json.field("peak_mm", r.travel().get(a) * 1e3))));
            MotionTables.contacts(json, r.contacts());
            json.field("clipped_samples", r.clipped()[0]).field("clipped_port_samples", r.clipped()[1]);
            json.field("agreement", agreement());
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    private String agreement() {
        double worst = 0;
        for (Stack s : traced.result().stacks()) {
            double[] p = predicted(s);
            double bare = predicted(Stack.BARE)[0];
            if (p[0] > 0.01 * bare) {
                worst = Math.max(worst, Math.abs(20 * Math.log10(traced.result().sensitivityPerG(s) / p[0])));
            }
        }
        String off = String.format(Locale.ROOT, "%.2g dB", worst);
        if (worst < 0.05) {
            return "Both roads agree: time domain and frequency domain differ by " + off + " at most.";
        }
        return request.linear() ? "The roads do NOT agree: they differ by " + off + "."
            : "At this level the motion differs from the linear prediction by " + off + ".";
    }

    private CommandPage page() {
        PageHead head = new PageHead(title, "DWELL", "none", agreement(), from, AssessmentSources.today());
        List<List<String>> rows = new ArrayList<>();
        for (Stack s : traced.result().stacks()) {
            double[] p = predicted(s);
            rows.add(List.of(StackName.of(s), QuantityText.ppb(traced.result().sensitivityPerG(s)),
                NumberFormat.brief(traced.result().phaseDeg(s), 4), QuantityText.ppb(p[0]), NumberFormat.brief(p[1], 4)));
        }
        PageTable grid = new PageTable("Component at the drive's frequency in the periodic steady state",
            List.of("stack", "time domain, ppb/g",
            "phase, deg", "frequency domain, ppb/g", "phase, deg"), rows);
        List<String> svgs = MotionTables.charts("", shown()).stream().map(TimeChart::svg).toList();
        return new CommandPage(head, List.of(
            new CommandPage.Part("Result", List.of(what(), agreement(), MotionTables.contactWords(traced.result().contacts()),
                clipped()), List.of(grid), List.of()),
            new CommandPage.Part("Lines", List.of(), List.of(spectrumGrid()), List.of()),
            new CommandPage.Part("Motion", List.of("The last periods."), List.of(), svgs)));
    }

    private quietband.motion.run.MotionTrace shown() {
        return traced.trace().last(SHOWN_PERIODS / request.frequencyHz());
    }

    private String clipped() {
        return traced.result().clipped()[0] + " sensor samples and " + traced.result().clipped()[1] + " port values are clipped.";
    }

    private String what() {
        return String.format(Locale.ROOT, "%s along %s, %.6g g peak, %s; %.4g s simulated, %.3g times real time.",
            QuantityText.hz(request.frequencyHz()), request.axis().letter(), request.peakG(),
            request.linear() ? "linear" : "with clipping, quantising, slack, stops and curvature",
            traced.result().simulated(), traced.result().simulated() / traced.elapsed());
    }

    /** The summary for a terminal, at most 80 columns wide. */
    public String text() {
        StringBuilder out = new StringBuilder(title + "\n" + what().replace("; ", "\n") + "\n\n");
        out.append(String.format(Locale.ROOT, "%-10s %14s %10s %18s %10s%n", "stack", "ppb/g", "deg", "predicted ppb/g", "deg"));
        for (Stack s : traced.result().stacks()) {
            double[] p = predicted(s);
            out.append(String.format(Locale.ROOT, "%-10s %14.6g %10.3f %18.6g %10.3f%n", s.key(),
                traced.result().sensitivityPerG(s) * PPB, traced.result().phaseDeg(s), p[0] * PPB, p[1]));
        }
        out.append('\n').append(agreement()).append('\n').append(MotionTables.contactWords(traced.result().contacts()))
            .append('\n').append(clipped()).append('\n').append(Caution.PREDICTION).append('\n');
        return MotionTables.wrapped(out.toString());
    }
}
