package quietband.report.motion;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.motion.run.LossError;
import quietband.motion.run.VibrationRun;
import quietband.report.assess.AssessmentSources;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.page.Caution;
import quietband.report.page.CommandPage;
import quietband.report.page.PageHead;
import quietband.report.page.PageTable;
import quietband.report.page.PageTemplates;
import quietband.report.page.StackName;
import quietband.response.ResidualResponse;
import quietband.spectrum.Welch;
import quietband.tuning.orient.BlankShock;

/** What random vibration, shock and recorded motion write: traces, spectra with the prediction, a page, a text. */
public final class VibrationFiles {

    private static final double PPB = 1e9;

    /**
     * What was asked.
     *
     * @param drive  random, shock or record
     * @param linear without the nonlinear parts
     * @param factor on the profile's density
     * @param loss   what the stand-in for loss factors changes; empty where nothing is predicted
     * @param blanks what the resonator's blank sees on its support, one of each pass of a shock; empty for other drives
     */
    public record Asked(String drive, boolean linear, double factor, Optional<LossError> loss, List<BlankShock> blanks) {

        public Asked {
            blanks = List.copyOf(blanks);
        }
    }

    private final Design design;
    private final String title;
    private final Asked asked;
    private final List<VibrationRun.Result> rides;
    private final Provenance from;
    private final List<List<SpectrumAgreement>> agreements = new ArrayList<>();

    /** For passes that have been run, one per axis or one for all. */
    public VibrationFiles(Design design, Asked asked, List<VibrationRun.Result> rides, Provenance from) {
        this.design = design;
        this.title = design.title().isEmpty() ? from.input() : design.title();
        this.asked = asked;
        this.rides = List.copyOf(rides);
        this.from = from;
        for (VibrationRun.Result r : rides) {
            boolean compared = asked.loss.isPresent() && r.spectra().map(w -> w.segments() > 1).orElse(false);
            agreements.add(compared ? SpectrumAgreement.of(design, r, axes(r), asked.factor, asked.loss.get()) : List.of());
        }
    }

    private static List<Axis> axes(VibrationRun.Result r) {
        if (!r.axis().equals("all")) {
            return List.of(Axis.of(r.axis()));
        }
        return Axis.ALL.stream().filter(a -> r.spectra().map(w -> power(w, a)).orElse(0.0) > 0).toList();
    }

    private static double power(Welch w, Axis a) {
        double sum = 0;
        for (int k = 1; k < w.bins(); k++) {
            sum += w.density(a.ordinal(), k);
        }
        return sum;
    }

    /** Writes all files. */
    public void writeTo(ResultDirectory directory) {
        List<String> names = rides.stream().map(VibrationRun.Result::axis).toList();
        directory.write("motion.csv", w -> MotionTables.trace(w, names, rides.stream().map(VibrationRun.Result::trace).toList()));
        if (rides.get(0).spectra().map(w -> w.segments() > 0).orElse(false)) {
            directory.write("spectrum.csv", this::spectrum);
        }
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
        String page = PageTemplates.page(page());
        directory.write("report.html", w -> w.write(page));
    }

    private void spectrum(Writer writer) throws IOException {
        List<String> header = new ArrayList<>(List.of("axis", "frequency_hz", "drive_g2_per_hz"));
        for (Stack s : rides.get(0).stacks()) {
            for (String of : List.of("_per_hz", "_coherence", "_estimated_ppb_per_g", "_predicted_ppb_per_g")) {
                header.add(s.key() + of);
            }
        }
        CsvWriter csv = new CsvWriter(writer, header);
        ResidualResponse response = new ResidualResponse(design);
        double[] re = new double[3];
        double[] im = new double[3];
        for (VibrationRun.Result r : rides) {
            Welch w = r.spectra().orElseThrow();
            for (Axis a : axes(r)) {
                for (int k = 1; k < w.bins() && k * w.resolutionHz() <= design.requirement().toHz() * 1.0001; k++) {
                    response.at(k * w.resolutionHz());
                    csv.cell(a.letter()).cell(k * w.resolutionHz()).cell(w.density(a.ordinal(), k));
                    for (int s = 0; s < r.stacks().size(); s++) {
                        response.residual(r.stacks().get(s), re, im);
                        csv.cell(w.density(3 + s, k)).cell(w.coherence(a.ordinal(), 3 + s, k))
                            .cell(PPB * w.response(a.ordinal(), 3 + s, k))
                            .cell(PPB * Math.hypot(re[a.ordinal()], im[a.ordinal()]));
                    }
                    csv.end();
                }
            }
        }
    }

    /** The summary. */
    public String json() {
        Json json = new Json();
        double simulated = rides.stream().mapToDouble(VibrationRun.Result::simulated).sum();
        double elapsed = rides.stream().mapToDouble(VibrationRun.Result::elapsed).sum();
        json.object(() -> {
            from.fields(json);
            json.field("title", design.title()).field("drive", asked.drive).field("linear", asked.linear)
                .field("simulated_s", simulated).field("real_time_factor", simulated / elapsed)
                .field("stopped_early", rides.stream().anyMatch(VibrationRun.Result::stopped));
            json.object("axes", () -> {
                for (int i = 0; i < rides.size(); i++) {
                    int at = i;
                    json.object(rides.get(i).axis(), () -> {
                        one(json, rides.get(at), agreements.get(at));
                        if (!asked.blanks.isEmpty()) {
                            json.object("blank", () -> json.field("bolted_peak_g", asked.blanks.get(at).bolted())
                                .field("platform_peak_g", asked.blanks.get(at).sprung()));
                        }
                    });
                }
            });
            json.field("agreement", agreement());
            json.array("method", () -> rides.get(0).notes().forEach(json::item));
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    private static void one(Json json, VibrationRun.Result r, List<SpectrumAgreement> agreement) {
        json.field("grid_hz", r.gridHz()).field("averages", r.spectra().map(Welch::segments).orElse(0));
        json.object("stacks", () -> {
            for (int s = 0; s < r.stacks().size(); s++) {
                int at = s;
                json.object(r.stacks().get(s).key(), () -> {
                    json.field("peak_ppb", r.peak()[at] * PPB).field("rms_ppb", r.rms()[at] * PPB);
                    if (!agreement.isEmpty()) {
                        SpectrumAgreement a = agreement.get(at);
                        json.field("band_rms_ppb", a.rms() * PPB).field("predicted_rms_ppb", a.predictedRms() * PPB)
                            .field("rms_standard_error_ppb", a.standardError() * PPB).field("inside_95_share", a.share())
                            .field("phase_jitter_rad", a.jitterRad()).field("agrees", a.holds());
                    }
                });
            }
        });
        json.object("travel", () -> Axis.ALL.forEach(a -> json.object(a.letter(), () ->
            json.field("peak_mm", r.travel().get(a) * 1e3).field("centre_peak_mm", r.centre().get(a) * 1e3))));
        MotionTables.contacts(json, r.contacts());
        json.field("clipped_samples", r.clipped()[0]).field("clipped_port_samples", r.clipped()[1]);
    }

    /** What the blank sees of a shock, along the axis, without stops and slack. */
    private List<String> blank(int pass) {
        if (asked.blanks.isEmpty()) {
            return List.of();
        }
        BlankShock b = asked.blanks.get(pass);
        return List.of(String.format(Locale.ROOT, "The blank on its support sees at most %s g bolted down%s.",
            NumberFormat.brief(b.bolted(), 3),
            Double.isNaN(b.sprung()) ? "" : ", " + NumberFormat.brief(b.sprung(), 3) + " g on the platform"));
    }

    private String agreement() {
        List<SpectrumAgreement> all = agreements.stream().flatMap(List::stream).toList();
        if (all.isEmpty()) {
            return "Nothing to compare with the frequency domain here.";
        }
        long off = all.stream().filter(a -> !a.holds()).count();
        return off == 0 ? "Both roads agree: the spectra of every stack lie where the frequency domain predicts them."
            : String.format(Locale.ROOT, "The roads do NOT agree in %d of %d spectra.%s", off, all.size(),
                asked.linear ? "" : " Clipping, slack, stops, curvature or folding may be why: try --linear.");
    }

    private CommandPage page() {
        PageHead head = new PageHead(title, asked.drive.toUpperCase(Locale.ROOT), "none", agreement(), from,
            AssessmentSources.today());
        List<CommandPage.Part> parts = new ArrayList<>();
        for (int i = 0; i < rides.size(); i++) {
            VibrationRun.Result r = rides.get(i);
            List<String> words = new ArrayList<>(List.of(what(r), MotionTables.contactWords(r.contacts()), r.clipped()[0]
                + " sensor samples and " + r.clipped()[1] + " port values are clipped."));
            agreements.get(i).forEach(a -> words.add(a.words()));
            asked.loss.ifPresent(l -> words.add(lossWords(l, r)));
            words.addAll(blank(i));
            List<String> svgs = new ArrayList<>();
            MotionTables.charts(r.axis(), r.trace()).forEach(c -> svgs.add(c.svg()));
            spectra(r).ifPresent(c -> svgs.add(c.svg()));
            parts.add(new CommandPage.Part("Housing moves along " + r.axis(), words, List.of(peaks(r)), svgs));
        }
        parts.add(new CommandPage.Part("How it was stepped", rides.get(0).notes(), List.of(), List.of()));
        return new CommandPage(head, parts);
    }

    private static String lossWords(LossError loss, VibrationRun.Result r) {
        double worst = 0;
        for (int s = 0; s < r.stacks().size(); s++) {
            worst = Math.max(worst, loss.worstDb(s));
        }
        return worst == 0 ? "No loss factor has to be fitted." : String.format(Locale.ROOT, "The fit that stands for the loss factor "
            + "changes the sensitivity by up to %.2f dB against the design; the prediction compared with takes that into account.", worst);
    }

    private static PageTable peaks(VibrationRun.Result r) {
        List<List<String>> rows = new ArrayList<>();
        for (int s = 0; s < r.stacks().size(); s++) {
            rows.add(List.of(StackName.of(r.stacks().get(s)), NumberFormat.brief(r.peak()[s] * PPB, 4),
                NumberFormat.brief(r.rms()[s] * PPB, 4)));
        }
        return new PageTable("Fractional frequency", List.of("stack", "peak, ppb", "rms, ppb"), rows);
    }

    private Optional<FrequencyChart> spectra(VibrationRun.Result r) {
        if (!r.spectra().map(w -> w.segments() > 0).orElse(false)) {
            return Optional.empty();
        }
        Welch w = r.spectra().get();
        double to = design.requirement().toHz();
        double fromHz = Math.max(design.requirement().fromHz(), w.resolutionHz());
        int first = (int) Math.ceil(fromHz / w.resolutionHz());
        int count = (int) Math.min(w.bins() - first, Math.floor(to / w.resolutionHz()) - first + 1);
        if (count < 2) {
            return Optional.empty();
        }
        ResidualResponse response = new ResidualResponse(design);
        double[] f = new double[count];
        List<ChartLine> lines = new ArrayList<>();
        for (int s = 0; s < r.stacks().size(); s++) {
            double[] estimated = new double[count];
            double[] predicted = new double[count];
            for (int i = 0; i < count; i++) {
                f[i] = (first + i) * w.resolutionHz();
                estimated[i] = w.density(3 + s, first + i);
                predicted[i] = asked.loss.isPresent() ? SpectrumAgreement.predicted(design, response, r.stacks().get(s), s, axes(r),
                    asked.factor, asked.loss.get(), f[i]) : Double.NaN;
            }
            lines.add(new ChartLine(StackName.of(r.stacks().get(s)), f, estimated, ChartStyle.of(r.stacks().get(s))));
            if (asked.loss.isPresent()) {
                lines.add(new ChartLine(s == 0 ? "predicted" : "", f, predicted, ChartStyle.LIMIT));
            }
        }
        return Optional.of(new FrequencyChart("chart-spectrum-" + r.axis(), "Density of fractional frequency and its prediction",
            "S_y, 1/Hz", fromHz, to, FrequencyChart.Scale.decades(lines, 8), lines));
    }

    private static String what(VibrationRun.Result r) {
        return String.format(Locale.ROOT, "Housing moves along %s: %.4g s simulated, %.3g times real time%s.", r.axis(), r.simulated(),
            r.simulated() / r.elapsed(), (r.stopped() ? ", stopped early" : "")
                + (r.trace().partial() ? String.format(Locale.ROOT, "; motion.csv holds the first %.4g s", r.trace().size()
                    / r.trace().rateHz()) : ""));
    }

    /** The summary for a terminal, at most 80 columns wide. */
    public String text() {
        StringBuilder out = new StringBuilder(title + "\n\n");
        for (int i = 0; i < rides.size(); i++) {
            VibrationRun.Result r = rides.get(i);
            out.append(what(r)).append('\n');
            for (int s = 0; s < r.stacks().size(); s++) {
                out.append(String.format(Locale.ROOT, "%-10s peak %12.5g ppb   rms %12.5g ppb%n", r.stacks().get(s).key(),
                    r.peak()[s] * PPB, r.rms()[s] * PPB));
            }
            agreements.get(i).forEach(a -> out.append(a.words()).append('\n'));
            blank(i).forEach(b -> out.append(b).append('\n'));
            out.append(MotionTables.contactWords(r.contacts())).append("\n\n");
        }
        return MotionTables.wrapped(out.append(agreement()).append('\n').append(Caution.PREDICTION).append('\n').toString());
    }
}
