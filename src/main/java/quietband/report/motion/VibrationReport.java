package quietband.report.motion;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.motion.run.LossError;
import quietband.motion.run.VibrationRun;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.report.file.Provenance;
import quietband.report.page.Report;
import quietband.spectrum.Welch;
import quietband.study.motion.PredictedSpectrum;
import quietband.study.motion.SpectrumAgreement;
import quietband.study.motion.VibrationStudy;

/** Random vibration, shock and recorded motion: traces, spectra with the prediction, a page, a text. */
public final class VibrationReport {

    private static final double PPB = 1e9;
    private final VibrationStudy study;
    private final Design design;

    private VibrationReport(VibrationStudy study) {
        this.study = study;
        this.design = study.design();
    }

    /** The report. */
    public static Report of(VibrationStudy study, Provenance from) {
        return new VibrationReport(study).report(from);
    }

    private Report report(Provenance from) {
        Report report = new Report(design.title(), from).of(design);
        List<VibrationRun.Result> rides = study.passes().stream().map(VibrationStudy.Pass::ride).toList();
        MotionTables.trace(report, rides.stream().map(VibrationRun.Result::axis).toList(),
            rides.stream().map(VibrationRun.Result::trace).toList());
        if (study.passes().get(0).predicted().isPresent()) {
            List<String> header = new ArrayList<>(List.of("axis", "frequency_hz", "drive_g2_per_hz"));
            rides.get(0).stacks().forEach(s -> List.of("_per_hz", "_coherence", "_estimated_ppb_per_g", "_predicted_ppb_per_g")
                .forEach(of -> header.add(s.key() + of)));
            report.table("spectrum.csv", header, this::spectrum);
        }
        report.summary(json -> fields(json, rides));
        report.line(report.title()).line("");
        for (VibrationStudy.Pass pass : study.passes()) {
            VibrationRun.Result r = pass.ride();
            report.line(what(r));
            for (int s = 0; s < r.stacks().size(); s++) {
                report.line("%-10s peak %12.5g ppb   rms %12.5g ppb", r.stacks().get(s).key(), r.peak()[s] * PPB, r.rms()[s] * PPB);
            }
            report.lines(pass.agreement().stream().map(VibrationReport::words).toList()).lines(blank(pass))
                .line(MotionTables.contactWords(r.contacts())).line("");
        }
        report.line(agreement()).wrapped().head(study.drive().toUpperCase(Locale.ROOT), "none", agreement());
        study.passes().forEach(pass -> part(report, pass));
        report.part("How it was stepped").say(rides.get(0).notes());
        return report;
    }

    private void spectrum(CsvWriter csv) throws IOException {
        for (VibrationStudy.Pass pass : study.passes()) {
            Welch w = pass.ride().spectra().orElseThrow();
            PredictedSpectrum predicted = pass.predicted().orElseThrow();
            for (int a = 0; a < predicted.axes().size(); a++) {
                int j = predicted.axes().get(a).ordinal();
                double[][] perG = predicted.perG()[a];
                for (int k = 1; k < perG[0].length; k++) {
                    csv.cell(predicted.axes().get(a).letter()).cell(k * w.resolutionHz()).cell(w.density(j, k));
                    for (int s = 0; s < perG.length; s++) {
                        csv.cell(w.density(3 + s, k)).cell(w.coherence(j, 3 + s, k)).cell(PPB * w.response(j, 3 + s, k))
                            .cell(PPB * perG[s][k]);
                    }
                    csv.end();
                }
            }
        }
    }

    private void fields(Json json, List<VibrationRun.Result> rides) {
        double simulated = rides.stream().mapToDouble(VibrationRun.Result::simulated).sum();
        double elapsed = rides.stream().mapToDouble(VibrationRun.Result::elapsed).sum();
        json.field("title", design.title()).field("drive", study.drive()).field("linear", study.linear())
            .field("simulated_s", simulated).field("real_time_factor", simulated / elapsed)
            .field("stopped_early", rides.stream().anyMatch(VibrationRun.Result::stopped));
        json.object("axes", () -> study.passes().forEach(pass -> json.object(pass.ride().axis(), () -> {
            one(json, pass.ride(), pass.agreement());
            pass.blank().ifPresent(b -> json.object("blank", () -> json.field("bolted_peak_g", b.bolted())
                .field("platform_peak_g", b.sprung())));
        })));
        json.field("agreement", agreement()).items("method", rides.get(0).notes());
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

    private static String words(SpectrumAgreement a) {
        return NumberFormat.text("%s: %.1f %% of %s inside the estimate's 95 %% interval, rms %.4g against %.4g "
            + "predicted (standard error %.2g), worst octave from %.4g Hz %+.2f %% (standard error %.2g %%): %s.", a.stack().key(),
            100 * a.share(), QuantityText.count(a.frequencies(), "frequency"), a.rms(), a.predictedRms(), a.standardError(), a.octave(),
                50 * (a.octaveRatio() - 1),
            50 * a.octaveError(), a.holds() ? "Time and frequency domain agree" : "time and frequency domain do NOT agree");
    }

    /** What the blank sees of a shock, along the axis, without stops and slack. */
    private static List<String> blank(VibrationStudy.Pass pass) {
        return pass.blank().map(b -> NumberFormat.text("The blank on its support sees at most %s g bare%s.",
            NumberFormat.brief(b.bolted(), 3), Double.isNaN(b.sprung()) ? "" : ", " + NumberFormat.brief(b.sprung(), 3)
            + " g isolated")).stream().toList();
    }

    private String agreement() {
        List<SpectrumAgreement> all = study.passes().stream().flatMap(p -> p.agreement().stream()).toList();
        if (all.isEmpty()) {
            return "Nothing to compare with the frequency domain here.";
        }
        long off = all.stream().filter(a -> !a.holds()).count();
        return off == 0 ? "Time and frequency domain agree: the spectra of every stack lie where the frequency domain predicts them."
            : NumberFormat.text("Time and frequency domain do NOT agree in %d of %d spectra.%s", off, all.size(),
                study.linear() ? "" : " Clipping, slack, stops, curvature or folding may be why: try --linear.");
    }

    private void part(Report report, VibrationStudy.Pass pass) {
        VibrationRun.Result r = pass.ride();
        Report.Part part = report.part("Housing moves " + (r.axis().equals("all") ? "along all axes at once" : "along " + r.axis()))
            .say(what(r), MotionTables.contactWords(r.contacts()),
            r.clipped()[0] + " sensor samples and " + r.clipped()[1] + " port values are clipped.");
        part.say(pass.agreement().stream().map(VibrationReport::words).toList());
        study.loss().ifPresent(l -> part.say(lossWords(l, r)));
        part.say(blank(pass)).table("Fractional frequency", List.of("stack", "peak, ppb", "rms, ppb"), IntStream.range(0,
            r.stacks().size()).mapToObj(s -> List.of(r.stacks().get(s).key(), NumberFormat.brief(r.peak()[s] * PPB, 4),
            NumberFormat.brief(r.rms()[s] * PPB, 4))).toList());
        MotionTables.charts(r.axis(), r.trace()).forEach(c -> part.inline(c.svg()));
        pass.predicted().flatMap(p -> chart(r, p)).ifPresent(c -> part.inline(c.svg()));
    }

    private static String lossWords(LossError loss, VibrationRun.Result r) {
        double worst = IntStream.range(0, r.stacks().size()).mapToDouble(loss::worstDb).max().orElse(0);
        return worst == 0 ? "No loss factor has to be fitted." : NumberFormat.text("The fit that stands for the loss factor "
            + "changes the sensitivity by up to %.2f dB against the design; the prediction compared with takes that into account.", worst);
    }

    private Optional<FrequencyChart> chart(VibrationRun.Result r, PredictedSpectrum predicted) {
        Welch w = r.spectra().orElseThrow();
        double to = design.requirement().toHz();
        double fromHz = Math.max(design.requirement().fromHz(), w.resolutionHz());
        int first = (int) Math.ceil(fromHz / w.resolutionHz());
        int count = (int) Math.min(w.bins() - first, Math.floor(to / w.resolutionHz()) - first + 1);
        if (count < 2) {
            return Optional.empty();
        }
        double[] f = IntStream.range(first, first + count).mapToDouble(k -> k * w.resolutionHz()).toArray();
        List<ChartLine> lines = new ArrayList<>();
        for (int s = 0; s < r.stacks().size(); s++) {
            int at = s;
            lines.add(new ChartLine(r.stacks().get(s).key(), f, IntStream.range(first, first + count)
                .mapToDouble(k -> w.density(3 + at, k)).toArray(), ChartStyle.of(r.stacks().get(s))));
            if (study.loss().isPresent()) {
                lines.add(new ChartLine(s == 0 ? "predicted" : "", f, Arrays.copyOfRange(predicted.density()[s], first, first + count),
                    ChartStyle.LIMIT));
            }
        }
        return Optional.of(new FrequencyChart("chart-spectrum-" + r.axis(), "Density of fractional frequency and its prediction",
            "S_y, 1/Hz", fromHz, to, FrequencyChart.Scale.decades(lines, 8), lines));
    }

    private static String what(VibrationRun.Result r) {
        return NumberFormat.text("Housing moves along %s: %.4g s simulated, %.3g times real time%s.", r.axis(), r.simulated(),
            r.simulated() / r.elapsed(), (r.stopped() ? ", stopped early" : "")
                + (r.trace().partial() ? NumberFormat.text("; motion.csv holds the first %.4g s", r.trace().size()
                    / r.trace().rateHz()) : ""));
    }
}
