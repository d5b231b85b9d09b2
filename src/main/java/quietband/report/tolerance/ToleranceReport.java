package quietband.report.tolerance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import quietband.demand.RequirementResult;
import quietband.demand.ResidualDemand;
import quietband.lot.Proportion;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.page.Report;
import quietband.study.tolerance.ToleranceResult;
import quietband.study.tolerance.ToleranceStudy;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.influence.SobolIndices;
import quietband.tolerance.influence.ToleranceInfluence;
import quietband.tolerance.judge.RequirementKind;

/** What a Monte Carlo tells beside the table of units: percentiles, influence, summary, page. */
public final class ToleranceReport {

    private static final List<String> NAMES = List.of("5 %", "median", "95 %", "99 %");

    private ToleranceReport() { }

    /** The report. */
    public static Report of(ToleranceStudy study, Provenance from) {
        ToleranceResult f = study.result();
        Report report = new Report(f.plan().nominal().title(), from).of(f.plan().nominal());
        study.likeliest().ifPresent(model -> report.model("likeliest/", model));
        List<String> columns = new ArrayList<>(List.of("frequency_hz"));
        f.outcome().stacks().forEach(s -> ToleranceStudy.SHARES.forEach(share -> columns.add(NumberFormat.text(
            "%s_p%02d_ppb_per_g", s.key(), Math.round(100 * share)))));
        report.table("percentiles.csv", columns, table -> {
            for (int i = 0; i < study.frequencyHz().length; i++) {
                table.cell(study.frequencyHz()[i]);
                for (double[][] stack : study.levelPerG()) {
                    for (double[] share : stack) {
                        table.cell(share[i] * 1e9);
                    }
                }
                table.end();
            }
        });
        f.influence().ifPresent(influence -> report.table("influence.csv", "tolerance,group,first_order,first_order_low,first_order_high,"
            + "total,total_low,total_high,rank_correlation,yield_from,yield_halved", influence.lines(), (table, l) -> {
                SobolIndices.Index s = l.sobol();
                table.cell(l.name()).cell(String.join(" + ", l.group())).cell(s.first()).cell(s.firstLow()).cell(s.firstHigh())
                    .cell(s.total()).cell(s.totalLow()).cell(s.totalHigh()).cell(l.rank()).cell(l.from()).cell(l.to());
            }));
        report.summary(json -> fields(json, f));
        ToleranceText.say(report, f, from, charts(study));
        return report;
    }

    private static List<String> charts(ToleranceStudy study) {
        Design nominal = study.result().plan().nominal();
        ResidualDemand demand = new ResidualDemand(nominal);
        List<String> charts = new ArrayList<>();
        for (int s = 0; s < study.levelPerG().length; s++) {
            String stack = study.result().outcome().stacks().get(s).key();
            List<ChartLine> lines = new ArrayList<>();
            for (int k = NAMES.size() - 1; k >= 0; k--) {
                lines.add(ChartLine.ppb(NAMES.get(k), study.frequencyHz(), study.levelPerG()[s][k], NAMES.get(k).equals("median")
                    ? ChartStyle.of(Stack.COMBINED) : ChartStyle.number(NAMES.size() - 1 - k)));
            }
            if (demand.asked()) {
                lines.add(ChartLine.ppb("limit", study.frequencyHz(), Arrays.stream(study.frequencyHz())
                    .map(v -> demand.limit(ResidualDemand.VECTOR, v)).toArray(),
                    ChartStyle.LIMIT));
            }
            charts.add(new FrequencyChart("band-" + stack, "Residual of the units, " + stack, stack + ", ppb/g",
                nominal.requirement().fromHz(), nominal.requirement().toHz(), FrequencyChart.Scale.decades(lines, 4), lines).svg());
        }
        return charts;
    }

    private static void fields(Json json, ToleranceResult f) {
        MonteCarloResult o = f.outcome();
        json.field("title", f.plan().nominal().title()).field("units", o.units()).field("partial", o.partial())
            .field("redrawn", o.redrawn());
        json.object("yield", () -> proportion(json, f.yieldIn(0)));
        json.object("yield_in_all_conditions", () -> proportion(json, f.yieldInAll()));
        json.objects("conditions", IntStream.range(0, o.conditions().size()).boxed().toList(), c -> {
            json.field("name", o.conditions().get(c)).object("yield", () -> proportion(json, f.yieldIn(c)));
            json.object("failed", () -> Arrays.stream(RequirementKind.values()).filter(a -> o.failed(c, a) > 0)
                .forEach(a -> json.field(a.key(), o.failed(c, a))));
        });
        f.asked().ifPresent(asked -> json.object("yield_requirement", () -> {
            json.field("share", asked.share()).field("confidence", asked.confidence()).field("at_least", f.atLeast())
                .field("met", f.yieldMet().orElse(null));
            if (asked.share() < 1 && asked.confidence() < 1) {
                json.field("units_needed_without_failure", Proportion.unitsNeeded(asked.share(), asked.confidence(), 0));
            }
        }));
        json.object("limit_factor", () -> List.of(90, 95, 99).forEach(share -> json.field("yield_" + share,
            o.margins().limitFactor(share / 100.0))));
        json.object("grid", () -> json.field("points", o.frequencies().length)
            .field("yield_on_points_alone", (double) o.evenlyMet() / o.units()).field("units_decided_otherwise", o.evenlyDiffers()));
        f.influence().ifPresent(i -> json.object("influence", () -> {
            json.field("evaluations", i.evaluations()).field("rows", ToleranceInfluence.ROWS).field("halved_on_units", i.halvedUnits());
            json.objects("tolerances", i.lines(), l -> json.field("name", l.name()).field("first_order", l.sobol().first())
                .field("total", l.sobol().total()).field("rank_correlation", l.rank()).field("yield_from", l.from())
                .field("yield_halved", l.to()));
        }));
        f.likeliest().ifPresent(l -> json.object("likeliest_failing_unit", () -> json.field("distance_sigma", l.distance())
            .items("moved", l.parts()).items("failed", l.failed().stream().map(RequirementResult::name).toList())));
        json.items("notes", f.plan().notes()).field("units_per_second", o.units() / f.seconds());
    }

    private static void proportion(Json json, Proportion p) {
        json.field("estimate", p.estimate()).field("low", p.low()).field("high", p.high()).field("confidence", p.confidence())
            .field("met", p.good());
    }
}
