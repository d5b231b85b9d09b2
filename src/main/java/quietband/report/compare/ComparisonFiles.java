package quietband.report.compare;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import quietband.demand.ResidualDemand;
import quietband.demand.ResidualPoint;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.report.assess.AssessmentSources;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.file.ResultDirectory;
import quietband.report.page.Caution;
import quietband.report.page.CommandPage;
import quietband.report.page.PageHead;
import quietband.report.page.PageTable;
import quietband.report.page.PageTemplates;
import quietband.report.page.StackName;
import quietband.report.page.VerdictSentence;
import quietband.response.FrequencyTable;

/** What a comparison of two designs writes: a table, charts, a page, a summary, a text. */
public final class ComparisonFiles {

    private static final ChartStyle FIRST = new ChartStyle(new java.awt.Color(0xC96A00), 1.8f, List.of(7f, 3f),
        ChartStyle.number(1).marker());
    private static final ChartStyle SECOND = ChartStyle.of(Stack.COMBINED);

    private final DesignComparison c;
    private final Provenance from;

    /** For a comparison. */
    public ComparisonFiles(DesignComparison comparison, Provenance from) {
        this.c = comparison;
        this.from = from;
    }

    /**
     * Writes all files.
     *
     * @param f frequencies of the table, Hz
     */
    public void writeTo(ResultDirectory directory, double[] f, int threads) {
        FrequencyTable first = FrequencyTable.of(c.first().assessment().design(), f, threads);
        FrequencyTable second = FrequencyTable.of(c.second().assessment().design(), f, threads);
        directory.write("compare.csv", w -> table(w, first, second));
        List<FrequencyChart> charts = charts();
        List<String> svgs = charts.stream().map(FrequencyChart::svg).toList();
        for (int i = 0; i < svgs.size(); i++) {
            String svg = svgs.get(i);
            directory.write(charts.get(i).name() + ".svg", w -> w.write(svg));
        }
        String page = PageTemplates.page(page(svgs));
        directory.write("report.html", w -> w.write(page));
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
    }

    private void table(Writer writer, FrequencyTable first, FrequencyTable second) throws IOException {
        List<String> header = new ArrayList<>(List.of("frequency_hz"));
        for (String side : List.of("first", "second")) {
            for (String of : List.of("x", "y", "z", "vector")) {
                header.add(side + "_" + of + "_ppb_per_g");
            }
        }
        CsvWriter csv = new CsvWriter(writer, header);
        for (int i = 0; i < first.rows().size(); i++) {
            csv.cell(first.rows().get(i).frequencyHz());
            cells(csv, first.rows().get(i), c.first().fullest());
            cells(csv, second.rows().get(i), c.second().fullest());
            csv.end();
        }
    }

    private static void cells(CsvWriter csv, FrequencyTable.Row row, int stack) {
        for (double y : row.residualPerG()[stack]) {
            csv.cell(y * 1e9);
        }
        csv.cell(row.vectorPerG(stack) * 1e9);
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
        double most = 0;
        for (double v : r.vibration()[stack]) {
            most = Math.max(most, v);
        }
        return 10 * StrictMath.log10(most + r.floor()[stack]);
    }

    private ChartLine line(DesignComparison.Side side, ChartStyle look, ToDoubleFunction<FrequencyTable.Row> value) {
        return line(side, look, value, (side.equals(c.first()) ? "first: " : "second: ") + side.name());
    }

    private static ChartLine line(DesignComparison.Side side, ChartStyle look, ToDoubleFunction<FrequencyTable.Row> value, String name) {
        List<FrequencyTable.Row> rows = side.curves().rows();
        String cut = name.length() > 40 ? name.substring(0, 37) + "..." : name;
        return new ChartLine(cut, rows.stream().mapToDouble(FrequencyTable.Row::frequencyHz).toArray(),
            rows.stream().mapToDouble(value).toArray(), look);
    }

    private static void limit(List<ChartLine> lines, DesignComparison.Side side, String name, ChartStyle look, int axis) {
        Design design = side.assessment().design();
        ResidualDemand demand = new ResidualDemand(design);
        if (demand.judges(axis)) {
            lines.add(line(side, look, r -> 1e9 * demand.limit(axis, r.frequencyHz()), name));
        }
    }

    private CommandPage page(List<String> svgs) {
        String why = c.differences().isEmpty() ? "The two models are the same."
            : c.differences().size() + (c.differences().size() == 1 ? " difference." : " differences.");
        PageHead head = new PageHead(c.first().title() + " and " + c.second().title(), "COMPARED", "none",
            why, from, AssessmentSources.today());
        List<List<String>> paths = c.differences().stream().map(d -> List.of(d.of(), d.first(), d.second())).toList();
        List<String> sides = List.of("first: " + c.first().name(), "second: " + c.second().name());
        List<List<String>> asked = c.pairs().stream().map(p -> List.of(p.name().replace('_', ' '), DesignComparison.outcome(p.first()),
            DesignComparison.outcome(p.second()))).toList();
        return new CommandPage(head, List.of(
            new CommandPage.Part("What differs", List.of(), List.of(new PageTable("By path", header("path", sides), paths)), List.of()),
            new CommandPage.Part("What is asked", List.of(sentence(c.first()), sentence(c.second())),
                List.of(new PageTable("Margin to the limit", header("asked", sides), asked),
                    new PageTable("Where the residual is within the limit", header("stack", sides), coverage())), List.of()),
            new CommandPage.Part("Residual and phase noise of the fullest stack", List.of(), List.of(), svgs)));
    }

    private static List<String> header(String first, List<String> sides) {
        List<String> header = new ArrayList<>(List.of(first));
        header.addAll(sides);
        return header;
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
                rows.add(List.of(StackName.of(stack), first, second));
            }
        }
        return rows;
    }

    private static String covered(DesignComparison.Side side, Stack stack) {
        return side.assessment().verdicts().stream().filter(v -> v.stack() == stack).findFirst()
            .map(v -> v.asked() ? QuantityText.ranges(v.intervals(), "nowhere") : "no limit").orElse("-");
    }

    /** The summary. */
    public String json() {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.object("first", () -> side(json, c.first()));
            json.object("second", () -> side(json, c.second()));
            json.array("differences", () -> c.differences().forEach(d -> json.object(() -> json.field("of", d.of())
                .field("first", d.first()).field("second", d.second()))));
            json.array("requirements", () -> c.pairs().forEach(p -> json.object(() -> {
                json.field("name", p.name());
                json.field("first_margin_db", p.first() == null ? Double.NaN : p.first().marginDb());
                json.field("second_margin_db", p.second() == null ? Double.NaN : p.second().marginDb());
                json.field("first_used_share", p.first() == null ? Double.NaN : p.first().usedShare());
                json.field("second_used_share", p.second() == null ? Double.NaN : p.second().usedShare());
            })));
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
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

    /** The summary for a terminal, at most 80 columns wide. */
    public String text() {
        List<String> lines = new ArrayList<>();
        lines.add(cut("first:  " + c.first().name() + "  (" + c.first().title() + ")"));
        lines.add(cut("second: " + c.second().name() + "  (" + c.second().title() + ")"));
        lines.add("");
        lines.add(c.differences().isEmpty() ? "The two models are the same." : "differs");
        c.differences().forEach(d -> {
            lines.add(cut("  " + d.of()));
            lines.add(cut("      " + d.first() + "  ->  " + d.second()));
        });
        lines.add("");
        lines.add(String.format(Locale.ROOT, "%-16s %18s %18s", "asked", "first", "second"));
        c.pairs().forEach(p -> lines.add(String.format(Locale.ROOT, "%-16s %18s %18s", p.name().replace('_', ' '),
            DesignComparison.outcome(p.first()), DesignComparison.outcome(p.second()))));
        lines.add("");
        lines.add("where the residual is within the limit");
        coverage().forEach(r -> {
            lines.add(cut("  " + r.get(0)));
            lines.add(cut("      first:  " + r.get(1)));
            lines.add(cut("      second: " + r.get(2)));
        });
        lines.add("");
        lines.add(Caution.PREDICTION);
        return String.join("\n", lines) + "\n";
    }

    private static String cut(String line) {
        String one = line.replaceAll("\\s*\\R\\s*", " ");
        return one.length() <= 80 ? one : one.substring(0, 77) + "...";
    }
}
