package quietband.report.compare;

import java.awt.Color;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import quietband.demand.RequirementResult;
import quietband.demand.ResidualDemand;
import quietband.demand.ResidualPoint;
import quietband.model.Axis;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.file.StackTables;
import quietband.report.page.Report;
import quietband.report.page.TerminalText;
import quietband.report.page.VerdictSentence;
import quietband.response.FrequencyTable;
import quietband.study.compare.DesignComparison;
import quietband.study.compare.ModelDifference;

/** A comparison of two designs: a table, charts, a page, a summary, a text. */
public final class ComparisonReport {

    private static final ChartStyle FIRST = new ChartStyle(new Color(0xC96A00), 1.8f, List.of(7f, 3f), ChartStyle.number(1).marker());
    private static final ChartStyle SECOND = ChartStyle.of(Stack.COMBINED);
    private final DesignComparison c;

    private ComparisonReport(DesignComparison comparison) {
        this.c = comparison;
    }

    /** The report. */
    public static Report of(DesignComparison comparison, Provenance from) {
        return new ComparisonReport(comparison).report(from);
    }

    private Report report(Provenance from) {
        Report report = new Report(c.first().title() + " and " + c.second().title(), from).of(c.first().assessment().design());
        report.table("compare.csv", StackTables.responseColumns(Stream.of("first", "second")), csv -> {
            for (int i = 0; i < c.first().table().rows().size(); i++) {
                csv.cell(c.first().table().rows().get(i).frequencyHz());
                cells(csv, c.first().table().rows().get(i), c.first().fullest());
                cells(csv, c.second().table().rows().get(i), c.second().fullest());
                csv.end();
            }
        });
        report.summary(this::fields);
        text(report);
        report.head("COMPARED", "none", c.differences().isEmpty() ? "The two models are the same."
            : c.differences().size() + (c.differences().size() == 1 ? " difference." : " differences."));
        List<String> sides = List.of("first: " + c.first().name(), "second: " + c.second().name());
        report.part("What differs").table("By path", header("path", sides), c.differences().stream().map(d -> List.of(d.of(),
            said(d.first()), said(d.second()))).toList());
        report.part("Requirements").say(sentence(c.first()), sentence(c.second())).table("Margin to the limit", header("requirement",
            sides),
            c.pairs().stream().map(p -> List.of(p.name().replace('_', ' '), outcome(p.first()), outcome(p.second()))).toList())
            .table("Where the residual is within the limit", header("stack", sides), coverage());
        report.part("Residual and phase noise of the fullest stack").charts(charts());
        return report;
    }

    private static void cells(CsvWriter csv, FrequencyTable.Row row, int stack) {
        csv.cells(1e9, row.residualPerG()[stack]).cell(row.vectorPerG(stack) * 1e9);
    }

    /** What a model has, in words. */
    static String said(ModelDifference.Value v) {
        return v.dimension().map(d -> QuantityText.amount(v.number(), v.number(), d, 9)).orElse(v.words());
    }

    /** What came of a requirement, in words. */
    private static String outcome(RequirementResult r) {
        return r == null ? "not required" : r.hasMargin() ? QuantityText.db(r.marginDb())
            : NumberFormat.brief(100 * r.usedShare(), 3) + " % used";
    }

    private List<FrequencyChart> charts() {
        List<FrequencyChart> charts = new ArrayList<>();
        for (int axis = 0; axis < 4; axis++) {
            int j = axis;
            List<ChartLine> lines = new ArrayList<>();
            lines.add(line(c.first(), FIRST, r -> 1e9 * residual(r, c.first().fullest(), j)));
            lines.add(line(c.second(), SECOND, r -> 1e9 * residual(r, c.second().fullest(), j)));
            limit(lines, c.first(), "limit", ChartStyle.LIMIT, j);
            if (c.differences().stream().anyMatch(d -> d.of().startsWith("requirement."))) {
                limit(lines, c.second(), "limit of the second", ChartStyle.number(3), j);
            }
            String of = j == 3 ? "vector" : Axis.ALL.get(j).letter();
            charts.add(chart("chart-residual-" + of, "Residual sensitivity of both designs, " + of, "residual " + of + ", ppb/g",
                FrequencyChart.Scale.decades(lines, 4), lines));
        }
        if (!c.first().curves().noiseRows().isEmpty() && !c.second().curves().noiseRows().isEmpty()) {
            List<ChartLine> lines = new ArrayList<>(List.of(line(c.first(), FIRST, r -> total(r, c.first().fullest())),
                line(c.second(), SECOND, r -> total(r, c.second().fullest())),
                line(c.first(), ChartStyle.LIMIT, FrequencyTable.Row::limitDbc, "limit")));
            lines.removeIf(l -> !Double.isFinite(l.top()));
            charts.add(chart("chart-phase-noise", "Phase noise of both designs at the output, worst axis", "phase noise, dBc/Hz",
                FrequencyChart.Scale.even(lines, 10, 120), lines));
        }
        return charts;
    }

    private FrequencyChart chart(String name, String title, String unit, FrequencyChart.Scale scale, List<ChartLine> lines) {
        Requirement r = c.first().assessment().design().requirement();
        Requirement s = c.second().assessment().design().requirement();
        return new FrequencyChart(name, title, unit, Math.min(r.fromHz(), s.fromHz()), Math.max(r.toHz(), s.toHz()), scale, lines);
    }

    private static double residual(FrequencyTable.Row r, int stack, int axis) {
        return axis == 3 ? r.vectorPerG(stack) : r.residualPerG()[stack][axis];
    }

    private static double total(FrequencyTable.Row r, int stack) {
        return 10 * StrictMath.log10(Arrays.stream(r.vibration()[stack]).reduce(0, Math::max) + r.floor()[stack]);
    }

    private ChartLine line(DesignComparison.Side side, ChartStyle look, ToDoubleFunction<FrequencyTable.Row> value) {
        return line(side, look, value, (side.equals(c.first()) ? "first: " : "second: ") + side.name());
    }

    private static ChartLine line(DesignComparison.Side side, ChartStyle look, ToDoubleFunction<FrequencyTable.Row> value, String name) {
        return ChartLine.of(name.length() > 40 ? name.substring(0, 37) + "..." : name, side.curves().rows(),
            FrequencyTable.Row::frequencyHz, value, look);
    }

    private static void limit(List<ChartLine> lines, DesignComparison.Side side, String name, ChartStyle look, int axis) {
        ResidualDemand demand = new ResidualDemand(side.assessment().design());
        if (demand.judges(axis)) {
            lines.add(line(side, look, r -> 1e9 * demand.limit(axis, r.frequencyHz()), name));
        }
    }

    private static List<String> header(String first, List<String> sides) {
        return Stream.concat(Stream.of(first), sides.stream()).toList();
    }

    private static String sentence(DesignComparison.Side side) {
        return side.name() + ": " + VerdictSentence.sentence(side.assessment());
    }

    private List<List<String>> coverage() {
        List<List<String>> rows = new ArrayList<>();
        for (Stack stack : Stack.values()) {
            String first = covered(c.first(), stack);
            String second = covered(c.second(), stack);
            if (!(first + second).equals("--")) {
                rows.add(List.of(stack.key(), first, second));
            }
        }
        return rows;
    }

    private static String covered(DesignComparison.Side side, Stack stack) {
        return side.assessment().verdicts().stream().filter(v -> v.stack() == stack).findFirst()
            .map(v -> v.asked() ? QuantityText.ranges(v.intervals(), "nowhere") : "no limit").orElse("-");
    }

    private void fields(Json json) {
        json.object("first", () -> side(json, c.first())).object("second", () -> side(json, c.second()));
        json.objects("differences", c.differences(), d -> json.field("of", d.of()).field("first", said(d.first()))
            .field("second", said(d.second())));
        json.objects("requirements", c.pairs(), p -> json.field("name", p.name())
            .field("first_margin_db", p.first() == null ? Double.NaN : p.first().marginDb())
            .field("second_margin_db", p.second() == null ? Double.NaN : p.second().marginDb())
            .field("first_used_share", p.first() == null ? Double.NaN : p.first().usedShare())
            .field("second_used_share", p.second() == null ? Double.NaN : p.second().usedShare()));
    }

    private static void side(Json json, DesignComparison.Side side) {
        json.field("model", side.name()).field("model_hash", side.hash()).field("title", side.assessment().design().title())
            .field("requirement_met", side.assessment().requirementMet().orElse(null));
        json.object("stacks", () -> side.assessment().verdicts().forEach(v -> json.object(v.stack().key(), () -> {
            ResidualPoint w = v.worst();
            json.field("frequency_hz", w.frequencyHz()).field("axis", w.axis()).field("residual_ppb_per_g", w.residualPerG() * 1e9)
                .field("margin_db", w.marginDb()).field("share", v.share());
        })));
    }

    private void text(Report report) {
        cut(report, "first:  " + c.first().name() + "  (" + c.first().title() + ")");
        cut(report, "second: " + c.second().name() + "  (" + c.second().title() + ")");
        report.line("").line(c.differences().isEmpty() ? "The two models are the same." : "differs");
        c.differences().forEach(d -> {
            cut(report, "  " + d.of());
            cut(report, "      " + said(d.first()) + "  ->  " + said(d.second()));
        });
        report.line("").line("%-16s %18s %18s", "requirement", "first", "second");
        c.pairs().forEach(p -> report.line("%-16s %18s %18s", p.name().replace('_', ' '), outcome(p.first()), outcome(p.second())));
        report.line("").line("where the residual is within the limit");
        coverage().forEach(r -> {
            cut(report, "  " + r.get(0));
            cut(report, "      first:  " + r.get(1));
            cut(report, "      second: " + r.get(2));
        });
        report.line("");
    }

    private static void cut(Report report, String line) {
        report.line(TerminalText.cut(line.replaceAll("\\s*\\R\\s*", " ")));
    }
}
