package quietband.report.filter;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import quietband.model.Design;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.report.file.ResultDirectory;
import quietband.report.page.CommandPage;
import quietband.report.page.PageTable;
import quietband.response.limits.PortUse;
import quietband.spectrum.LogGrid;

/** The tuning port in a report: swing against range, harmonics of its curvature, noise of converter and reference. */
final class PortReport {

    private static final int POINTS = 160;

    private final Design design;
    private final PortUse use;

    /** For a design with a correction. */
    PortReport(Design design) {
        this.design = design;
        Requirement r = design.requirement();
        use = PortUse.of(design, LogGrid.between(POINTS, r.fromHz(), r.toHz()));
    }

    /** Writes {@code tuning.csv} and {@code harmonics.csv}. */
    void writeTo(ResultDirectory directory) {
        directory.write("tuning.csv", this::noise);
        directory.write("harmonics.csv", this::harmonics);
        String svg = chart().svg();
        directory.write("chart-tuning.svg", w -> w.write(svg));
    }

    private void noise(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "offset_hz", "sensor_dbc_hz", "quantiser_dbc_hz", "reference_dbc_hz", "curvature_dbc_hz",
            "static_dbc_hz");
        for (PortUse.Noise n : use.noise()) {
            csv.cell(n.offsetHz()).cell(PortUse.decibels(n.sensor())).cell(PortUse.decibels(n.quantiser()))
                .cell(PortUse.decibels(n.reference())).cell(PortUse.decibels(n.bent())).cell(PortUse.decibels(n.staticNoise())).end();
        }
    }

    private void harmonics(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "tone", "axis", "frequency_hz", "peak_g", "swing_v", "harmonic_hz", "harmonic_ppb",
            "harmonic_dbc");
        for (PortUse.Harmonic h : use.tones()) {
            csv.cell(h.name()).cell(h.axis().letter()).cell(h.frequencyHz()).cell(h.peakG()).cell(h.swingV()).cell(2 * h.frequencyHz())
                .cell(1e9 * h.amplitude()).cell(h.levelDbc()).end();
        }
    }

    /** Writes the block {@code tuning} of a summary. */
    void fields(Json json) {
        json.object("tuning", () -> {
            json.field("range_v", use.rangeV());
            json.array("swing", () -> use.swings().forEach(s -> json.object(() -> json.field("axis", s.row())
                .field("sigma_v", s.sigmaV()).field("tones_v", s.tonesV()).field("peak_v", s.peakV())
                .field("used_share", Double.isFinite(use.rangeV()) ? s.peakV() / use.rangeV() : Double.NaN)
                .field("mean_shift_ppb", 1e9 * s.shift()).field("curvature_noise_rms_ppb", 1e9 * s.bentRms()))));
            json.array("harmonics", () -> use.tones().forEach(h -> json.object(() -> json.field("tone", h.name())
                .field("axis", h.axis().letter()).field("harmonic_hz", 2 * h.frequencyHz()).field("swing_v", h.swingV())
                .field("harmonic_ppb", 1e9 * h.amplitude()).field("harmonic_dbc", h.levelDbc()))));
            json.object("integrated_phase_noise_mrad", () -> json.field("sensor", 1e3 * rms(PortUse.Noise::sensor))
                .field("quantiser", 1e3 * rms(PortUse.Noise::quantiser)).field("reference", 1e3 * rms(PortUse.Noise::reference))
                .field("curvature", 1e3 * rms(PortUse.Noise::bent)));
        });
    }

    /** sqrt(2 integral of L df) over the band, straight between points. */
    private double rms(ToDoubleFunction<PortUse.Noise> of) {
        double sum = 0;
        for (int i = 1; i < use.noise().size(); i++) {
            PortUse.Noise a = use.noise().get(i - 1);
            PortUse.Noise b = use.noise().get(i);
            sum += (of.applyAsDouble(a) + of.applyAsDouble(b)) / 2 * (b.offsetHz() - a.offsetHz());
        }
        return Math.sqrt(2 * sum);
    }

    /** One line for a terminal. */
    String line() {
        if (!use.known()) {
            return "tuning port: no slope is given, so its swing is not known";
        }
        PortUse.Swung most = use.swings().stream().max(java.util.Comparator.comparingDouble(PortUse.Swung::peakV)).orElse(null);
        String swing = most == null ? "nothing drives it" : String.format(Locale.ROOT, "swings +-%s V under %s%s",
            NumberFormat.brief(most.peakV(), 4), most.row(), Double.isFinite(use.rangeV())
                ? String.format(Locale.ROOT, ", %.1f %% of +-%s V", 100 * most.peakV() / use.rangeV(),
                NumberFormat.brief(use.rangeV(), 4)) : "");
        return "tuning port: " + swing + use.tones().stream().max(java.util.Comparator.comparingDouble(PortUse.Harmonic::levelDbc))
            .filter(h -> Double.isFinite(h.levelDbc())).map(h -> String.format(Locale.ROOT,
            "; highest second harmonic %.1f dBc at %s, axis %s",
                h.levelDbc(), QuantityText.hz(2 * h.frequencyHz()), h.axis().letter())).orElse("");
    }

    /** The section of a page. */
    CommandPage.Part part() {
        List<String> told = new ArrayList<>();
        told.add(capital(line()) + ".");
        told.add(String.format(Locale.ROOT, "Integrated over the band at the output: sensors %s, quantiser %s, voltage noise of "
            + "the port %s, "
            + "curvature under random vibration %s mrad.", NumberFormat.brief(1e3 * rms(PortUse.Noise::sensor), 3),
            NumberFormat.brief(1e3 * rms(PortUse.Noise::quantiser), 3), NumberFormat.brief(1e3 * rms(PortUse.Noise::reference), 3),
            NumberFormat.brief(1e3 * rms(PortUse.Noise::bent), 3)));
        told.add("Curvature makes of a swing V cos(w t) a second harmonic slope curvature V^2/4 and shifts the mean as much; sums and "
            + "differences of different tones are left out.");
        List<PageTable> grids = new ArrayList<>();
        if (!use.swings().isEmpty()) {
            grids.add(new PageTable("Swing at the port in the fullest stack", List.of("drive", "random, 1 sigma", "tones, peak",
                "3 sigma + tones",
                "of the range", "shift of the mean"), use.swings().stream().map(this::row).toList()));
        }
        if (!use.tones().isEmpty()) {
            grids.add(new PageTable("Second harmonics of the tones", List.of("tone", "axis", "swing, V", "second harmonic at", "ppb",
                "dBc at the output"), use.tones().stream()
                .map(h -> List.of(h.name() + " " + QuantityText.hz(h.frequencyHz()), h.axis().letter(),
                    NumberFormat.brief(h.swingV(), 4), QuantityText.hz(2 * h.frequencyHz()), NumberFormat.brief(1e9 * h.amplitude(), 3),
                    Double.isFinite(h.levelDbc()) ? String.format(Locale.ROOT, "%.1f", h.levelDbc()) : "none")).toList()));
        }
        return new CommandPage.Part("Tuning port", told, grids, List.of(chart().svg()));
    }

    private List<String> row(PortUse.Swung s) {
        return List.of(s.row(), NumberFormat.brief(s.sigmaV(), 4) + " V", NumberFormat.brief(s.tonesV(), 4) + " V",
            NumberFormat.brief(s.peakV(), 4) + " V",
            Double.isFinite(use.rangeV()) ? String.format(Locale.ROOT, "%.1f %%", 100 * s.peakV() / use.rangeV()) : "no range given",
            NumberFormat.brief(1e9 * s.shift(), 3) + " ppb");
    }

    private static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    private FrequencyChart chart() {
        List<ChartLine> lines = new ArrayList<>();
        add(lines, "sensors", PortUse.Noise::sensor, ChartStyle.number(0));
        add(lines, "quantiser", PortUse.Noise::quantiser, ChartStyle.number(1));
        add(lines, "voltage noise of the port", PortUse.Noise::reference, ChartStyle.number(2));
        add(lines, "curvature, random vibration", PortUse.Noise::bent, ChartStyle.number(3));
        add(lines, "static phase noise", PortUse.Noise::staticNoise, ChartStyle.of(Stack.COMBINED));
        Requirement r = design.requirement();
        return new FrequencyChart("chart-tuning", "Noise that the correction adds at the output", "dBc/Hz", r.fromHz(), r.toHz(),
            FrequencyChart.Scale.even(lines, 20, 160), lines);
    }

    private void add(List<ChartLine> lines, String name, ToDoubleFunction<PortUse.Noise> of, ChartStyle look) {
        double[] y = use.noise().stream().mapToDouble(n -> PortUse.decibels(of.applyAsDouble(n))).toArray();
        if (java.util.Arrays.stream(y).anyMatch(Double::isFinite)) {
            lines.add(new ChartLine(name, use.noise().stream().mapToDouble(PortUse.Noise::offsetHz).toArray(), y, look));
        }
    }
}
