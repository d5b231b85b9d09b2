package quietband.report.filter;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import quietband.filter.AnalogNetwork;
import quietband.filter.FilterGoal;
import quietband.filter.analog.FoundNetworks;
import quietband.model.Axis;
import quietband.model.Requirement;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.page.Report;
import quietband.report.svg.Picture;
import quietband.study.filter.NetworkDesign;
import quietband.study.filter.ResidualChange;

/** Analog networks: parts, response, charts, summary, page; no model, which cannot hold a network. */
public final class NetworkReport {

    private static final String NO_MODEL = "The model file has no key for such a network and none of its keys gives exactly this "
        + "response, so no changed model is written";
    private final NetworkDesign design;
    private final FoundNetworks found;
    private final ResidualChange residual;

    private NetworkReport(NetworkDesign design) {
        this.design = design;
        this.found = design.found();
        this.residual = design.residual();
    }

    /** The report. */
    public static Report of(NetworkDesign design, Provenance from) {
        return new NetworkReport(design).report(from);
    }

    private Report report(Provenance from) {
        String title = found.task().design().title();
        Requirement r = found.task().design().requirement();
        Report report = new Report((title.isEmpty() ? from.input() : title) + ", analog network", from).of(found.task().design());
        report.table("parts.csv", "sensor_axis,r1_ohm,r2_ohm,r3_ohm,c1_farad,r4_ohm,c2_farad,gain,lead_zero_hz,lead_pole_hz,lag_pole_hz,"
            + "lag_zero_hz", Axis.ALL, (csv, axis) -> {
                AnalogNetwork n = network(axis);
                csv.cell(axis.letter()).cell(n.r1()).cell(n.r2()).cell(lead(n, n.r3())).cell(lead(n, n.c1())).cell(lag(n, n.r4()))
                    .cell(lag(n, n.c2())).cell(n.gain()).cell(lead(n, n.leadZeroHz())).cell(lead(n, n.leadPoleHz()))
                    .cell(lag(n, n.lagPoleHz())).cell(lag(n, n.lagZeroHz()));
            });
        report.table("analog.csv", "frequency_hz,x_db,x_phase_deg,y_db,y_phase_deg,z_db,z_phase_deg", design.response(), (csv, at) -> {
            csv.cell(at.frequencyHz());
            for (int i = 0; i < 3; i++) {
                csv.cell(at.gainDb()[i]).cell(at.phaseDeg()[i]);
            }
        });
        report.summary(this::fields);
        report.line(report.title()).origin().line("").lines(sentences()).line("");
        for (Axis axis : Axis.ALL) {
            AnalogNetwork n = network(axis);
            report.line(axis.letter() + ": r1 " + ohm(n.r1()) + ", r2 " + ohm(n.r2()) + (n.leads() ? ", lead r3 " + ohm(n.r3()) + " c1 "
                + farad(n.c1()) : "") + (n.lags() ? ", lag r4 " + ohm(n.r4()) + " c2 " + farad(n.c2()) : ""));
        }
        report.line("note: " + NO_MODEL).line("");
        report.head("NETWORK", "none", "after: " + ResidualText.sentence(residual.after().worst()));
        report.part("Parts").say("One stage for each sensor: r1, in parallel with r3 and c1 in series, leads "
            + "from the sensor to the inverting input; r2, in parallel with r4 and c2 in series, goes around the stage. F = r2/r1 "
            + "(1 + s (r1 + r3) c1)/(1 + s r3 c1) (1 + s r4 c2)/(1 + s (r2 + r4) c2), "
            + "without the stage's inversion: turn the polarity once more behind it.",
            "Resistors from " + design.series().name() + " (1 kohm to 10 Mohm), capacitors from E24 (100 pF to 1 uF), of IEC 60063. An "
            + "ideal amplifier; its own noise, that of the resistors and the parts' tolerances are left out.", NO_MODEL + ".")
            .say(sentences().stream().map(s -> s.substring(0, 1).toUpperCase(Locale.ROOT) + s.substring(1) + ".").toList())
            .table("Parts for each sensor", List.of("sensor", "r1", "r2", "r3", "c1", "r4", "c2", "gain", "lead from, to", "lag from, to"),
                Axis.ALL.stream().map(this::row).toList())
            .chart(Picture.of("circuit", AnalogSketch.svg(found.networks().stream().anyMatch(AnalogNetwork::leads),
                found.networks().stream().anyMatch(AnalogNetwork::lags))));
        report.part("Residual and response").charts(ResidualText.charts("chart-analog-", " before and with the network", r, residual))
            .chart(response("chart-analog-gain", "Gain of the networks", "gain, dB", NetworkDesign.Response::gainDb))
            .chart(response("chart-analog-phase", "Phase of the networks", "phase, deg", NetworkDesign.Response::phaseDeg));
        return report;
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

    private void fields(Json json) {
        json.field("form", "analog").field("count", found.task().count()).field("series", design.series().name())
            .field("goal", found.task().goal().key()).field("max_gain_db", FilterReport.decibels(found.task().maxGain()));
        ResidualText.worst(json, "residual_before", residual.before().worst());
        ResidualText.worst(json, "residual_after", residual.after().worst());
        json.field("value", found.value()).field("value_with_any_parts", found.ideal())
            .field("value_with_changed_weights", found.weighted()).axes("weight_factor", found.factor()::get);
        json.object("networks", () -> Axis.ALL.forEach(axis -> json.object(axis.letter(), () -> {
            AnalogNetwork n = network(axis);
            json.field("r1_ohm", n.r1()).field("r2_ohm", n.r2()).field("r3_ohm", lead(n, n.r3())).field("c1_farad", lead(n, n.c1()))
                .field("r4_ohm", lag(n, n.r4())).field("c2_farad", lag(n, n.c2())).field("gain", n.gain());
        })));
        json.items("warnings", List.of(NO_MODEL));
    }

    private List<String> sentences() {
        FilterGoal goal = found.task().goal();
        String what = goal == FilterGoal.LIMIT ? "largest residual over its limit"
            : goal == FilterGoal.NOISE ? "integrated phase noise, mrad" : "root of the sum of squares, ppb/g";
        double unit = goal == FilterGoal.LIMIT ? 1 : goal == FilterGoal.NOISE ? 1e3 : 1e9;
        return List.of("before: " + ResidualText.sentence(residual.before().worst()),
            "after: " + ResidualText.sentence(residual.after().worst()), NumberFormat.text("%s: %s with parts of any value, %s "
            + "with those of the list, %s with weights changed to make up for the steps of the gain (x times %.5f, y times %.5f, z times "
            + "%.5f)", what, NumberFormat.brief(unit * found.ideal(), 5), NumberFormat.brief(unit * found.value(), 5),
            NumberFormat.brief(unit * found.weighted(), 5), found.factor().x(), found.factor().y(), found.factor().z()),
            found.task().design().cancellation().orElseThrow().path().sampled()
                ? "the network stands in place of the digital filter; sampling, hold and latency of the path stay as the model has them; "
                + "for a path that is analog throughout leave sample_rate and latency out of the model"
                : "the path is analog throughout");
    }

    private static String ohm(double v) {
        return v >= 1e6 ? NumberFormat.brief(v / 1e6, 3) + " Mohm" : NumberFormat.brief(v / 1e3, 3) + " kohm";
    }

    private static String farad(double v) {
        return v >= 1e-9 ? NumberFormat.brief(v * 1e9, 2) + " nF" : NumberFormat.brief(v * 1e12, 2) + " pF";
    }

    private List<String> row(Axis axis) {
        AnalogNetwork n = network(axis);
        return List.of(axis.letter(), ohm(n.r1()), ohm(n.r2()), n.leads() ? ohm(n.r3()) : "none", n.leads() ? farad(n.c1()) : "none",
            n.lags() ? ohm(n.r4()) : "none", n.lags() ? farad(n.c2()) : "none", NumberFormat.brief(n.gain(), 4),
            n.leads() ? QuantityText.range(n.leadZeroHz(), n.leadPoleHz()) : "-",
            n.lags() ? QuantityText.range(n.lagPoleHz(), n.lagZeroHz()) : "-");
    }

    private FrequencyChart response(String name, String title, String unit, Function<NetworkDesign.Response, double[]> of) {
        List<ChartLine> lines = Axis.ALL.stream().map(axis -> ChartLine.of(axis.letter(), design.response(),
            NetworkDesign.Response::frequencyHz, at -> of.apply(at)[axis.ordinal()], ChartStyle.number(axis.ordinal()))).toList();
        double top = lines.stream().mapToDouble(ChartLine::top).max().orElse(1);
        double span = top - lines.stream().mapToDouble(l -> l.bottom(false)).min().orElse(0);
        double step = span > 10 ? 5 : span > 2 ? 1 : 0.5;
        double[] f = lines.get(0).x();
        return new FrequencyChart(name, title, unit, f[0], f[f.length - 1], FrequencyChart.Scale.even(lines, step, 200), lines);
    }
}
