package quietband.report.change;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import quietband.demand.ResidualDemand;
import quietband.model.Stack;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.Json;
import quietband.report.file.Provenance;
import quietband.report.page.Report;
import quietband.response.verdict.StackVerdict;
import quietband.study.orient.OrientStudy;
import quietband.study.orient.TriedSupport;
import quietband.tuning.orient.BlankShock;
import quietband.tuning.orient.Orientation;

/** A resonator turned: the changed model, what an error of the angle costs, supports, chart, page, summary. */
public final class OrientReport {

    private OrientReport() { }

    /** The report. */
    public static Report of(OrientStudy s, Provenance from) {
        Orientation turn = s.turn();
        Report report = new Report(s.base().design().title(), from).of(s.base().design());
        report.model("", s.changed().bundle());
        String unit = turn.goal() == Orientation.Goal.NOISE ? "_mrad" : turn.limited() ? "_over_limit" : "_ppb_per_g";
        report.table("angle_error.csv", "angle_error_deg,recalibrated" + unit + ",weights_kept" + unit, errors(turn), (table, e) ->
            table.cell(Math.toDegrees(e.angle())).cell(shown(turn, e.recalibrated())).cell(shown(turn, e.kept())));
        if (!s.tried().isEmpty()) {
            report.table("supports.csv", "support,source,relative_sensitivity,lowest_resonance_hz,in_band,bare_worst_ppb_per_g,"
                + "bare_worst_hz,worst_ppb_per_g,worst_hz,margin_db,goal_before,goal_after,blank_shock_bolted_g,blank_shock_sprung_g",
                s.tried(), (table, t) -> table.cell(t.row().name()).cell(t.row().source()).cell(t.row().relative())
                    .cell(t.row().lowestHz()).yes(t.inBand()).cell(t.bare().worst().residualPerG() * 1e9)
                    .cell(t.bare().worst().frequencyHz()).cell(t.full().worst().residualPerG() * 1e9)
                    .cell(t.full().worst().frequencyHz()).cell(t.full().worst().marginDb()).cell(shown(turn, t.before()))
                    .cell(shown(turn, t.after())).cell(bolted(t)).cell(sprung(t)));
            s.tried().forEach(t -> report.model("supports/" + t.row().name() + "/", t.model().bundle()));
        }
        report.summary(json -> fields(json, s));
        OrientText.say(report, s, from, chart(s));
        return report;
    }

    /** The errors of the angle, none first. */
    static List<Orientation.AngleError> errors(Orientation turn) {
        return Stream.concat(Stream.of(new Orientation.AngleError(0, turn.after(), turn.after())), turn.errors().stream()).toList();
    }

    /** A figure of the goal in the unit people see. */
    static double shown(Orientation turn, double figure) {
        return turn.goal() == Orientation.Goal.NOISE ? figure * 1e3 : turn.limited() ? figure : figure * 1e9;
    }

    private static double bolted(TriedSupport t) {
        return t.shock().map(BlankShock::bolted).orElse(Double.NaN);
    }

    private static double sprung(TriedSupport t) {
        return t.shock().map(BlankShock::sprung).orElse(Double.NaN);
    }

    private static void fields(Json json, OrientStudy s) {
        Orientation turn = s.turn();
        json.field("goal", turn.goal().name().toLowerCase(Locale.ROOT)).field("unit", OrientText.unit(turn))
            .field("before", shown(turn, turn.before())).field("after", shown(turn, turn.after()))
            .field("unturned", shown(turn, turn.unturned()));
        json.object("turn", () -> json.axes("axis", turn.turn().axis()::get).field("angle_deg", Math.toDegrees(turn.turn().angle())));
        json.axes("mounted_ppb_per_g", turn.mounted().times(1e9)::get).field("stack", s.after().stack().key());
        json.object("worst_before", () -> worst(json, s.before())).object("worst_after", () -> worst(json, s.after()));
        json.objects("supports", s.tried(), t -> json.field("support", t.row().name()).field("source", t.row().source())
            .field("invented", t.row().invented()).field("in_band", t.inBand()).field("lowest_resonance_hz", t.row().lowestHz())
            .field("before", shown(turn, t.before())).field("after", shown(turn, t.after())).field("blank_shock_bolted_g", bolted(t))
            .field("blank_shock_sprung_g", sprung(t)).object("worst", () -> worst(json, t.full())));
    }

    private static void worst(Json json, StackVerdict v) {
        json.field("frequency_hz", v.worst().frequencyHz()).field("axis", v.worst().axis())
            .field("residual_ppb_per_g", v.worst().residualPerG() * 1e9).field("margin_db", v.worst().marginDb());
    }

    private static FrequencyChart chart(OrientStudy s) {
        double[] f = s.frequencyHz();
        List<ChartLine> lines = new ArrayList<>(List.of(ChartLine.ppb("before", f, s.worstBefore(), ChartStyle.number(0)),
            ChartLine.ppb("after", f, s.worstAfter(), ChartStyle.of(Stack.COMBINED))));
        ResidualDemand demand = new ResidualDemand(s.base().design());
        if (demand.asked()) {
            lines.add(ChartLine.ppb("limit", f, Arrays.stream(f).map(v -> demand.limit(ResidualDemand.VECTOR, v)).toArray(),
                ChartStyle.LIMIT));
        }
        double top = Arrays.stream(f).max().orElse(2000);
        double low = Arrays.stream(f).min().orElse(10);
        return new FrequencyChart("chart-orient", "Worst axis before and after the turn", s.after().stack().key() + ", ppb/g",
            low, top > low ? top : 1.1 * low, FrequencyChart.Scale.decades(lines, 4), lines);
    }
}
