package quietband.report.change;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import quietband.model.Stack;
import quietband.report.assess.AssessmentSources;
import quietband.report.assess.AssessmentText;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.HeatMap;
import quietband.report.chart.TimeChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.file.ResultDirectory;
import quietband.report.page.Caution;
import quietband.report.page.CommandPage;
import quietband.report.page.PageHead;
import quietband.report.page.PageTemplates;
import quietband.tuning.trade.TradeSweep;
import quietband.tuning.trade.VariedQuantity;
import quietband.units.Unit;

/** What the command trade writes for a sweep: table, maps or curves, page, summary, text. */
public final class TradeFiles {

    private static final String[] AXES = {"x", "y", "z"};

    private final TradeSweep trade;
    private final List<Unit> units;
    private final Provenance from;

    /**
     * For a sweep.
     *
     * @param units in which each varied quantity is written
     */
    public TradeFiles(TradeSweep trade, List<Unit> units, Provenance from) {
        this.trade = trade;
        this.units = List.copyOf(units);
        this.from = from;
    }

    /** A quantity that is looked at: name, title with unit, and its limit. */
    private record Output(String name, String title, double limit,
        java.util.function.ToDoubleFunction<TradeSweep.Point> of) { }

    private List<Output> outputs() {
        List<Output> all = new ArrayList<>();
        all.add(new Output("margin", "worst margin of the residual, dB", 0, TradeSweep.Point::marginDb));
        all.add(new Output("coverage", "share of the band within the limit, %", Double.NaN, p -> 100 * p.coverage()));
        double jitter = trade.design().requirement().jitter().map(j -> 1e3 * j.limitRad()).orElse(Double.NaN);
        all.add(new Output("jitter", "integrated phase noise, mrad", jitter, p -> 1e3 * p.jitter()));
        boolean clear = trade.design().platform().flatMap(p -> p.clearance()).isPresent();
        all.add(clear ? new Output("travel", "travel over clearance, worst axis, %", 100, p -> 100 * share(p))
            : new Output("travel", "travel, worst axis, mm", Double.NaN, p -> 1e3 * largest(p)));
        all.removeIf(o -> trade.points().stream().noneMatch(p -> Double.isFinite(o.of().applyAsDouble(p))));
        return all;
    }

    private static double largest(TradeSweep.Point p) {
        return p.travel() == null ? Double.NaN : Math.max(p.travel()[0], Math.max(p.travel()[1], p.travel()[2]));
    }

    private double share(TradeSweep.Point p) {
        double most = p.travel() == null ? Double.NaN : 0;
        for (int i = 0; i < 3 && p.travel() != null; i++) {
            double clear = trade.design().platform().orElseThrow().clearance().orElseThrow().get(i);
            most = Math.max(most, p.travel()[i] == 0 ? 0 : p.travel()[i] / clear);
        }
        return most;
    }

    /** Writes all files. */
    public void writeTo(ResultDirectory directory) {
        directory.write("trade.csv", this::table);
        Map<String, String> charts = new LinkedHashMap<>();
        outputs().forEach(o -> charts.put("chart-" + o.name(), trade.axes().size() > 1 ? map(o) : curve(o)));
        charts.forEach((name, svg) -> directory.write(name + ".svg", w -> w.write(svg)));
        String page = PageTemplates.page(page(List.copyOf(charts.values())));
        directory.write("report.html", w -> w.write(page));
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
    }

    private void table(Writer writer) throws IOException {
        List<String> header = new ArrayList<>();
        for (int a = 0; a < units.size(); a++) {
            header.add(column(trade.axes().get(a), units.get(a)));
        }
        header.addAll(List.of("worst_margin_db", "worst_frequency_hz", "worst_axis", "coverage_share", "jitter_rad"));
        for (String axis : AXES) {
            header.add("travel_" + axis + "_mm");
        }
        header.addAll(List.of("requirement_met", "not_met"));
        CsvWriter csv = new CsvWriter(writer, header);
        for (TradeSweep.Point p : trade.points()) {
            for (int a = 0; a < units.size(); a++) {
                csv.cell(in(p.values()[a], units.get(a)));
            }
            csv.cell(p.marginDb()).cell(p.worstHz()).cell(p.worst()).cell(p.coverage()).cell(p.jitter());
            for (int i = 0; i < 3; i++) {
                csv.cell(p.travel() == null ? Double.NaN : 1e3 * p.travel()[i]);
            }
            csv.cell(p.met() == null ? "" : p.met() ? "yes" : "no").cell(String.join(" ", p.broken()));
            csv.end();
        }
    }

    static double in(double value, Unit unit) {
        return unit.fromBase(value).doubleValue();
    }

    /** The path and unit in snake case. */
    static String column(VariedQuantity v, Unit unit) {
        String text = v.what().path() + " " + unit.text().replace("%", "percent").replace("/", " per ").replace("*",
            " ")
            .replace("^", "");
        return text.toLowerCase(java.util.Locale.ROOT).replaceAll("[^a-z0-9]+", "_").replaceAll("^_|_$", "");
    }

    static String label(VariedQuantity v, Unit unit) {
        return unit.text().isEmpty() ? v.what().path() : v.what().path() + ", " + unit.text();
    }

    private double now(int axis) {
        return in(trade.design().quantities().value(trade.axes().get(axis).what().slot(0)), units.get(axis));
    }

    private String map(Output o) {
        int nx = trade.axes().get(0).steps();
        int ny = trade.axes().get(1).steps();
        double[][] z = new double[ny][nx];
        for (int j = 0; j < ny; j++) {
            for (int i = 0; i < nx; i++) {
                z[j][i] = o.of().applyAsDouble(trade.points().get(j * nx + i));
            }
        }
        return new HeatMap("chart-" + o.name(), o.title(), scale(0), scale(1), z, o.limit(), new double[] {now(0),
            now(1)}).svg();
    }

    private HeatMap.Scale scale(int a) {
        VariedQuantity v = trade.axes().get(a);
        return new HeatMap.Scale(label(v, units.get(a)), in(v.from(), units.get(a)), in(v.to(), units.get(a)));
    }

    private String curve(Output o) {
        double[] x = trade.points().stream().mapToDouble(p -> in(p.values()[0], units.get(0))).toArray();
        double[] y = trade.points().stream().mapToDouble(o.of()).toArray();
        List<ChartLine> lines = new ArrayList<>(List.of(new ChartLine(o.title(), x, y, ChartStyle.of(Stack.COMBINED))));
        if (!Double.isNaN(o.limit())) {
            lines.add(new ChartLine("limit", new double[] {x[0], x[x.length - 1]}, new double[] {o.limit(), o.limit()},
                ChartStyle.LIMIT));
        }
        return new TimeChart("chart-" + o.name(), o.title(), label(trade.axes().get(0), units.get(0)), o.title(),
            lines).svg();
    }

    private String point(TradeSweep.Point p) {
        List<String> parts = new ArrayList<>();
        for (int a = 0; a < units.size(); a++) {
            parts.add(trade.axes().get(a).what().path() + " = " + NumberFormat.brief(in(p.values()[a], units.get(a)), 5)
                + (units.get(a).text().isEmpty() ? "" : " " + units.get(a).text()));
        }
        return String.join(", ", parts);
    }

    private List<String> sentences() {
        long met = trade.points().stream().filter(p -> Boolean.TRUE.equals(p.met())).count();
        List<String> s = new ArrayList<>();
        s.add(trade.points().size() + " designs; " + met + " of them meet everything asked.");
        if (trade.best() >= 0) {
            TradeSweep.Point p = trade.points().get(trade.best());
            s.add((Boolean.TRUE.equals(p.met()) ? "Best of those: " : "Largest margin: ") + point(p) + ", worst margin "
                + QuantityText.db(p.marginDb()) + " at " + QuantityText.hz(p.worstHz()) + " on " + p.worst() + ".");
        }
        return s;
    }

    private CommandPage page(List<String> svgs) {
        String title = trade.design().title();
        PageHead head = new PageHead(title.isEmpty() ? from.input() : title, "TRADE", "none",
            String.join(" and ", trade.axes().stream().map(v -> v.what().path()).toList()), from, AssessmentSources.today());
        List<String> told = new ArrayList<>(sentences());
        told.add(trade.axes().size() > 1 ? "The red line is the limit; the ring is the design as it is."
            : "Each curve over the quantity, with its limit.");
        return new CommandPage(head, List.of(new CommandPage.Part("Worst margin, coverage, jitter and travel", told,
            List.of(), svgs)));
    }

    /** The summary. */
    public String json() {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("title", trade.design().title());
            json.array("varied", () -> {
                for (int a = 0; a < units.size(); a++) {
                    VariedQuantity v = trade.axes().get(a);
                    Unit unit = units.get(a);
                    json.object(() -> json.field("of", v.what().path()).field("from", in(v.from(), unit)).field("to",
                        in(v.to(), unit))
                        .field("unit", unit.text()).field("steps", v.steps()));
                }
            });
            json.field("designs", trade.points().size())
                .field("designs_met", trade.points().stream().filter(p -> Boolean.TRUE.equals(p.met())).count());
            if (trade.best() >= 0) {
                TradeSweep.Point p = trade.points().get(trade.best());
                json.object("best", () -> {
                    for (int a = 0; a < units.size(); a++) {
                        json.field(column(trade.axes().get(a), units.get(a)), in(p.values()[a], units.get(a)));
                    }
                    json.field("worst_margin_db", p.marginDb()).field("frequency_hz", p.worstHz()).field("axis",
                        p.worst())
                        .field("coverage_share", p.coverage()).field("jitter_rad", p.jitter()).field("requirement_met",
                        p.met());
                });
            }
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    /** The summary for a terminal. */
    public String text() {
        List<String> lines = new ArrayList<>();
        lines.add(trade.design().title().isEmpty() ? from.input() : trade.design().title());
        lines.add("");
        sentences().forEach(s -> AssessmentText.hang("", s, lines));
        lines.add("");
        lines.add(Caution.PREDICTION);
        return String.join("\n", lines) + "\n";
    }
}
