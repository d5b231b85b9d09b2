package quietband.report.filter;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.hipparchus.complex.Complex;
import quietband.filter.AnalogNetwork;
import quietband.filter.FilterGoal;
import quietband.filter.FilteredResidual;
import quietband.filter.analog.FoundNetworks;
import quietband.filter.analog.PreferredValues;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Requirement;
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
import quietband.spectrum.LogGrid;

/** What the search for analog networks writes: parts, response, charts, summary, page; no model, which cannot hold a network. */
public final class AnalogFiles {

    private static final int POINTS = 200;
    private static final String NO_MODEL = "The model file has no key for such a network and none of its keys gives exactly this "
        + "response, so no changed model is written";

    private final FoundNetworks found;
    private final PreferredValues series;
    private final Provenance from;
    private final FilteredResidual before;
    private final FilteredResidual after;

    /** For networks found. */
    public AnalogFiles(FoundNetworks found, PreferredValues series, Provenance from) {
        this.found = found;
        this.series = series;
        this.from = from;
        before = FilteredResidual.of(design());
        after = FilteredResidual.of(design(), found.networks());
    }

    private Design design() {
        return found.task().design();
    }

    /** Writes all files. */
    public void writeTo(ResultDirectory directory) {
        directory.write("parts.csv", this::parts);
        directory.write("analog.csv", this::response);
        directory.write("circuit.svg", w -> w.write(circuit()));
        for (FrequencyChart chart : charts()) {
            String svg = chart.svg();
            directory.write(chart.name() + ".svg", w -> w.write(svg));
        }
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
        String page = PageTemplates.page(page());
        directory.write("report.html", w -> w.write(page));
    }

    private void parts(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "sensor_axis", "r1_ohm", "r2_ohm", "r3_ohm", "c1_farad", "r4_ohm", "c2_farad",
            "gain", "lead_zero_hz",
            "lead_pole_hz", "lag_pole_hz", "lag_zero_hz");
        for (Axis axis : Axis.ALL) {
            AnalogNetwork n = network(axis);
            csv.cell(axis.letter()).cell(n.r1()).cell(n.r2()).cell(lead(n, n.r3())).cell(lead(n, n.c1())).cell(lag(n, n.r4()))
                .cell(lag(n, n.c2())).cell(n.gain()).cell(lead(n, n.leadZeroHz())).cell(lead(n, n.leadPoleHz())).cell(lag(n, n.lagPoleHz()))
                .cell(lag(n, n.lagZeroHz())).end();
        }
    }

    private static double lead(AnalogNetwork n, double value) {
        return n.leads() ? value : Double.NaN;
    }

    private static double lag(AnalogNetwork n, double value) {
        return n.lags() ? value : Double.NaN;
    }

    private AnalogNetwork network(Axis axis) {
        return found.networks().get(axis.ordinal());
    }

    private void response(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "frequency_hz", "x_db", "x_phase_deg", "y_db", "y_phase_deg", "z_db", "z_phase_deg");
        for (double f : frequencies()) {
            csv.cell(f);
            for (Axis axis : Axis.ALL) {
                Complex at = network(axis).at(f);
                csv.cell(FilterSummary.decibels(at.norm())).cell(Math.toDegrees(at.getArgument()));
            }
            csv.end();
        }
    }

    private double[] frequencies() {
        Requirement r = design().requirement();
        return LogGrid.between(POINTS, r.fromHz(), r.toHz());
    }

    /** The summary. */
    public String json() {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("form", "analog").field("count", found.task().count()).field("series", series.name())
                .field("goal", found.task().goal().key()).field("max_gain_db", FilterSummary.decibels(found.task().maxGain()));
            MeasuredReport.worst(json, "residual_before", before.worst());
            MeasuredReport.worst(json, "residual_after", after.worst());
            json.field("value", found.value()).field("value_with_any_parts", found.ideal())
                .field("value_with_changed_weights", found.weighted());
            json.object("weight_factor", () -> Axis.ALL.forEach(axis -> json.field(axis.letter(), found.factor().get(axis))));
            json.object("networks", () -> Axis.ALL.forEach(axis -> json.object(axis.letter(), () -> {
                AnalogNetwork n = network(axis);
                json.field("r1_ohm", n.r1()).field("r2_ohm", n.r2()).field("r3_ohm", lead(n, n.r3())).field("c1_farad", lead(n, n.c1()))
                    .field("r4_ohm", lag(n, n.r4())).field("c2_farad", lag(n, n.c2())).field("gain", n.gain());
            })));
            json.array("warnings", () -> json.item(NO_MODEL));
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    private String title() {
        return design().title().isEmpty() ? from.input() : design().title();
    }

    private List<String> sentences() {
        boolean sampled = design().cancellation().orElseThrow().path().sampled();
        FilterGoal goal = found.task().goal();
        String what = goal == FilterGoal.LIMIT ? "largest residual over its limit"
            : goal == FilterGoal.NOISE ? "integrated phase noise, mrad" : "root of the sum of squares, ppb/g";
        double unit = goal == FilterGoal.LIMIT ? 1 : goal == FilterGoal.NOISE ? 1e3 : 1e9;
        String rounding = String.format(Locale.ROOT, "%s: %s with parts of any value, %s with those of the list, %s with weights "
            + "changed to make up for the steps of the gain (x times %.5f, y times %.5f, z times %.5f)", what,
            NumberFormat.brief(unit * found.ideal(), 5),
            NumberFormat.brief(unit * found.value(), 5), NumberFormat.brief(unit * found.weighted(), 5), found.factor().x(),
            found.factor().y(),
            found.factor().z());
        return List.of("before: " + MeasuredReport.sentence(before.worst()), "after: " + MeasuredReport.sentence(after.worst()), rounding,
            sampled ? "the network stands in place of the digital filter; sampling, hold and latency of the path stay as the "
                + "model has them; "
                + "for a path that is analog throughout leave sample_rate and latency out of the model"
                : "the path is analog throughout");
    }

    /** The summary for a terminal. */
    public String text() {
        List<String> lines = new ArrayList<>();
        lines.add(title() + ", analog network");
        lines.add(String.format(Locale.ROOT, "model %s, quietband %s", from.modelHash().substring(0, 12), from.version()));
        lines.add("");
        lines.addAll(sentences());
        lines.add("");
        for (Axis axis : Axis.ALL) {
            AnalogNetwork n = network(axis);
            lines.add(axis.letter() + ": r1 " + ohm(n.r1()) + ", r2 " + ohm(n.r2()) + (n.leads() ? ", lead r3 " + ohm(n.r3()) + " c1 "
                + farad(n.c1()) : "") + (n.lags() ? ", lag r4 " + ohm(n.r4()) + " c2 " + farad(n.c2()) : ""));
        }
        lines.add("mind: " + NO_MODEL);
        lines.add("");
        lines.add(Caution.PREDICTION);
        return String.join("\n", lines) + "\n";
    }

    private static String ohm(double v) {
        return v >= 1e6 ? NumberFormat.brief(v / 1e6, 3) + " Mohm" : NumberFormat.brief(v / 1e3, 3) + " kohm";
    }

    private static String farad(double v) {
        return v >= 1e-9 ? NumberFormat.brief(v * 1e9, 2) + " nF" : NumberFormat.brief(v * 1e12, 2) + " pF";
    }

    private String circuit() {
        return AnalogSketch.svg(found.networks().stream().anyMatch(AnalogNetwork::leads),
            found.networks().stream().anyMatch(AnalogNetwork::lags));
    }

    private CommandPage page() {
        PageHead head = new PageHead(title() + ", analog network", "NETWORK", "none",
            "after: " + MeasuredReport.sentence(after.worst()), from, AssessmentSources.today());
        List<CommandPage.Part> parts = new ArrayList<>();
        List<String> told = new ArrayList<>(List.of("One stage for each sensor: r1, in parallel with r3 and c1 in series, leads "
            + "from the sensor to the inverting input; r2, in parallel with r4 and c2 in series, goes around the stage. F = r2/r1 "
            + "(1 + s (r1 + r3) c1)/(1 + s r3 c1) (1 + s r4 c2)/(1 + s (r2 + r4) c2), "
            + "without the stage's inversion: turn the polarity once more behind it.",
            "Resistors from " + series.name() + " (1 kohm to 10 Mohm), capacitors from E24 (100 pF to 1 uF), of IEC 60063. An "
            + "ideal amplifier; its own noise, that of the resistors and the parts' tolerances are left out.", NO_MODEL + "."));
        sentences().forEach(s -> told.add(s.substring(0, 1).toUpperCase(Locale.ROOT) + s.substring(1) + "."));
        parts.add(new CommandPage.Part("Parts", told, List.of(new PageTable("Parts for each sensor", List.of("sensor", "r1", "r2", "r3",
            "c1", "r4", "c2", "gain", "lead from, to", "lag from, to"), Axis.ALL.stream().map(this::row).toList())), List.of(circuit())));
        parts.add(new CommandPage.Part("Residual and response", List.of(), List.of(), charts().stream().map(FrequencyChart::svg).toList()));
        return new CommandPage(head, parts);
    }

    private List<String> row(Axis axis) {
        AnalogNetwork n = network(axis);
        return List.of(axis.letter(), ohm(n.r1()), ohm(n.r2()), n.leads() ? ohm(n.r3()) : "none", n.leads() ? farad(n.c1()) : "none",
            n.lags() ? ohm(n.r4()) : "none", n.lags() ? farad(n.c2()) : "none", NumberFormat.brief(n.gain(), 4),
            n.leads() ? QuantityText.range(n.leadZeroHz(), n.leadPoleHz()) : "-", n.lags()
            ? QuantityText.range(n.lagPoleHz(), n.lagZeroHz()) : "-");
    }

    private List<FrequencyChart> charts() {
        Requirement r = design().requirement();
        List<FrequencyChart> charts = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            List<ChartLine> lines = MeasuredReport.lines(before, after, axis.ordinal());
            charts.add(new FrequencyChart("chart-analog-" + axis.letter(), "Residual along " + axis.letter()
                + " before and with the network",
                axis.letter() + ", ppb/g", r.fromHz(), r.toHz(), FrequencyChart.Scale.decades(lines, 5), lines));
        }
        charts.add(response("chart-analog-gain", "Gain of the networks", "gain, dB", v -> FilterSummary.decibels(v.norm())));
        charts.add(response("chart-analog-phase", "Phase of the networks", "phase, deg", v -> Math.toDegrees(v.getArgument())));
        return charts;
    }

    private FrequencyChart response(String name, String title, String unit, ToDoubleFunction<Complex> of) {
        double[] f = frequencies();
        List<ChartLine> lines = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            lines.add(new ChartLine(axis.letter(), f, java.util.Arrays.stream(f).map(v -> of.applyAsDouble(network(axis).at(v))).toArray(),
                ChartStyle.number(axis.ordinal())));
        }
        double top = lines.stream().mapToDouble(ChartLine::top).max().orElse(1);
        double span = top - lines.stream().mapToDouble(l -> l.bottom(false)).min().orElse(0);
        double step = span > 10 ? 5 : span > 2 ? 1 : 0.5;
        return new FrequencyChart(name, title, unit, f[0], f[f.length - 1], FrequencyChart.Scale.even(lines, step, 200), lines);
    }
}
