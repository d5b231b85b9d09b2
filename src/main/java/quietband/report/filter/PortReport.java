package quietband.report.filter;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.report.page.Report;
import quietband.response.limits.PortUse;
import quietband.study.filter.TuningPort;

/** The tuning port in a report: swing against range, harmonics of its curvature, noise of converter and reference. */
final class PortReport {

    private PortReport() { }

    /** Tables, chart and the part of the page. */
    static void say(Report report, Requirement band, TuningPort port) {
        PortUse use = port.use();
        report.table("tuning.csv", "offset_hz,sensor_dbc_hz,quantiser_dbc_hz,reference_dbc_hz,curvature_dbc_hz,static_dbc_hz", use.noise(),
            (csv, n) -> csv.cell(n.offsetHz()).cell(PortUse.decibels(n.sensor())).cell(PortUse.decibels(n.quantiser()))
                .cell(PortUse.decibels(n.reference())).cell(PortUse.decibels(n.bent())).cell(PortUse.decibels(n.staticNoise())));
        report.table("harmonics.csv", "tone,axis,frequency_hz,peak_g,swing_v,harmonic_hz,harmonic_ppb,harmonic_dbc", use.tones(),
            (csv, h) -> csv.cell(h.name()).cell(h.axis().letter()).cell(h.frequencyHz()).cell(h.peakG()).cell(h.swingV())
                .cell(2 * h.frequencyHz()).cell(1e9 * h.amplitude()).cell(h.levelDbc()));
        String line = line(port);
        Report.Part part = report.part("Tuning port").say(line.substring(0, 1).toUpperCase(Locale.ROOT) + line.substring(1) + ".",
            NumberFormat.text("Integrated over the band at the output: sensors %s, quantiser %s, voltage noise of the port %s, "
            + "curvature under random vibration %s mrad.", NumberFormat.brief(1e3 * port.sensorRad(), 3),
            NumberFormat.brief(1e3 * port.quantiserRad(), 3), NumberFormat.brief(1e3 * port.referenceRad(), 3),
            NumberFormat.brief(1e3 * port.curvatureRad(), 3)), "Curvature makes of a swing V cos(w t) a second harmonic slope curvature "
            + "V^2/4 and shifts the mean as much; sums and differences of different tones are left out.");
        if (!use.swings().isEmpty()) {
            part.table("Swing at the port in the fullest stack", List.of("drive", "random, 1 sigma", "tones, peak", "3 sigma + tones",
                "of the range", "shift of the mean"), use.swings().stream().map(s -> row(s, use.rangeV())).toList());
        }
        if (!use.tones().isEmpty()) {
            part.table("Second harmonics of the tones", List.of("tone", "axis", "swing, V", "second harmonic at", "ppb",
                "dBc at the output"), use.tones().stream().map(h -> List.of(h.name() + " " + QuantityText.hz(h.frequencyHz()),
                h.axis().letter(), NumberFormat.brief(h.swingV(), 4), QuantityText.hz(2 * h.frequencyHz()),
                NumberFormat.brief(1e9 * h.amplitude(), 3),
                Double.isFinite(h.levelDbc()) ? NumberFormat.text("%.1f", h.levelDbc()) : "none")).toList());
        }
        part.chart(chart(use, band));
    }

    /** Writes the block {@code tuning} of a summary. */
    static void fields(Json json, TuningPort port) {
        PortUse use = port.use();
        json.object("tuning", () -> {
            json.field("range_v", use.rangeV());
            json.objects("swing", use.swings(), s -> json.field("axis", s.row()).field("sigma_v", s.sigmaV()).field("tones_v", s.tonesV())
                .field("peak_v", s.peakV()).field("used_share", Double.isFinite(use.rangeV()) ? s.peakV() / use.rangeV() : Double.NaN)
                .field("mean_shift_ppb", 1e9 * s.shift()).field("curvature_noise_rms_ppb", 1e9 * s.bentRms()));
            json.objects("harmonics", use.tones(), h -> json.field("tone", h.name()).field("axis", h.axis().letter())
                .field("harmonic_hz", 2 * h.frequencyHz()).field("swing_v", h.swingV()).field("harmonic_ppb", 1e9 * h.amplitude())
                .field("harmonic_dbc", h.levelDbc()));
            json.object("integrated_phase_noise_mrad", () -> json.field("sensor", 1e3 * port.sensorRad())
                .field("quantiser", 1e3 * port.quantiserRad()).field("reference", 1e3 * port.referenceRad())
                .field("curvature", 1e3 * port.curvatureRad()));
        });
    }

    /** One line for a terminal. */
    static String line(TuningPort port) {
        PortUse use = port.use();
        if (!use.known()) {
            return "tuning port: no slope is given, so its swing is not known";
        }
        String swing = use.swings().stream().max(Comparator.comparingDouble(PortUse.Swung::peakV)).map(most -> NumberFormat.text(
            "swings +-%s V under %s%s", NumberFormat.brief(most.peakV(), 4), most.row(), Double.isFinite(use.rangeV())
                ? NumberFormat.text(", %.1f %% of +-%s V", 100 * most.peakV() / use.rangeV(),
                NumberFormat.brief(use.rangeV(), 4)) : "")).orElse("nothing drives it");
        return "tuning port: " + swing + use.tones().stream().max(Comparator.comparingDouble(PortUse.Harmonic::levelDbc))
            .filter(h -> Double.isFinite(h.levelDbc())).map(h -> NumberFormat.text("; highest second harmonic %.1f dBc at %s, "
                + "axis %s", h.levelDbc(), QuantityText.hz(2 * h.frequencyHz()), h.axis().letter())).orElse("");
    }

    private static List<String> row(PortUse.Swung s, double rangeV) {
        return List.of(s.row(), NumberFormat.brief(s.sigmaV(), 4) + " V", NumberFormat.brief(s.tonesV(), 4) + " V",
            NumberFormat.brief(s.peakV(), 4) + " V",
            Double.isFinite(rangeV) ? NumberFormat.text("%.1f %%", 100 * s.peakV() / rangeV) : "no range given",
            NumberFormat.brief(1e9 * s.shift(), 3) + " ppb");
    }

    private static FrequencyChart chart(PortUse use, Requirement r) {
        List<ChartLine> lines = new ArrayList<>(List.of(line("sensors", use, PortUse.Noise::sensor, ChartStyle.number(0)),
            line("quantiser", use, PortUse.Noise::quantiser, ChartStyle.number(1)),
            line("voltage noise of the port", use, PortUse.Noise::reference, ChartStyle.number(2)),
            line("curvature, random vibration", use, PortUse.Noise::bent, ChartStyle.number(3)),
            line("static phase noise", use, PortUse.Noise::staticNoise, ChartStyle.of(Stack.COMBINED))));
        lines.removeIf(l -> Arrays.stream(l.y()).noneMatch(Double::isFinite));
        return new FrequencyChart("chart-tuning", "Noise that the cancellation adds at the output", "dBc/Hz", r.fromHz(), r.toHz(),
            FrequencyChart.Scale.even(lines, 20, 160), lines);
    }

    private static ChartLine line(String name, PortUse use, ToDoubleFunction<PortUse.Noise> of, ChartStyle look) {
        return ChartLine.of(name, use.noise(), PortUse.Noise::offsetHz, n -> PortUse.decibels(of.applyAsDouble(n)), look);
    }
}
