package quietband.report.change;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import quietband.model.Stack;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.HeatMap;
import quietband.report.chart.TimeChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.page.Report;
import quietband.tuning.trade.TradeSweep;
import quietband.units.Unit;

/** A sweep of the command trade: table, maps or curves, page, summary, text. */
public final class TradeReport {

    private final TradeSweep trade;
    private final List<VariedText> axes;

    private TradeReport(TradeSweep trade, List<Unit> units) {
        this.trade = trade;
        this.axes = VariedText.all(trade.axes(), units);
    }

    /**
     * The report.
     *
     * @param units in which each varied quantity is written
     */
    public static Report of(TradeSweep trade, List<Unit> units, Provenance from) {
        return new TradeReport(trade, units).report(from);
    }

    private Report report(Provenance from) {
        Report report = new Report(trade.design().title(), from).of(trade.design());
        String varied = axes.stream().map(VariedText::column).collect(Collectors.joining(","));
        report.table("trade.csv", varied + ",worst_margin_db,worst_frequency_hz,worst_axis,coverage_share,jitter_rad,travel_x_mm,"
            + "travel_y_mm,travel_z_mm,requirement_met,not_met", trade.points(), this::row);
        report.summary(this::fields);
        report.line(report.title()).line("");
        sentences().forEach(s -> report.hang("", s));
        report.line("").head("TRADE", "none", axes.stream().map(VariedText::path).collect(Collectors.joining(" and ")));
        report.part("Worst margin, coverage, jitter and travel").say(sentences()).say(axes.size() > 1
            ? "The red line is the limit; the ring is the design as it is." : "Each curve over the quantity, with its limit.")
            .charts(outputs().stream().map(o -> axes.size() > 1 ? map(o) : curve(o)).toList());
        return report;
    }

    /** A quantity that is looked at: name, title with unit, and its limit. */
    private record Output(String name, String title, double limit, ToDoubleFunction<TradeSweep.Point> of) { }

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

    private void row(CsvWriter csv, TradeSweep.Point p) {
        values(p).forEach(csv::cell);
        csv.cell(p.marginDb()).cell(p.worstHz()).cell(p.worst()).cell(p.coverage()).cell(p.jitter());
        csv.cells(1e3, p.travel() == null ? new double[] {Double.NaN, Double.NaN, Double.NaN} : p.travel());
        csv.cell(p.met() == null ? "" : p.met() ? "yes" : "no").cell(String.join(" ", p.broken()));
    }

    private DoubleStream values(TradeSweep.Point p) {
        return IntStream.range(0, axes.size()).mapToDouble(a -> axes.get(a).in(p.values()[a]));
    }

    private HeatMap map(Output o) {
        int nx = trade.axes().get(0).steps();
        int ny = trade.axes().get(1).steps();
        double[][] z = new double[ny][nx];
        for (int j = 0; j < ny; j++) {
            for (int i = 0; i < nx; i++) {
                z[j][i] = o.of().applyAsDouble(trade.points().get(j * nx + i));
            }
        }
        return new HeatMap("chart-" + o.name(), o.title(), scale(axes.get(0)), scale(axes.get(1)), z, o.limit(),
            new double[] {axes.get(0).now(trade.design()), axes.get(1).now(trade.design())});
    }

    private static HeatMap.Scale scale(VariedText v) {
        return new HeatMap.Scale(v.label(), v.from(), v.to());
    }

    private TimeChart curve(Output o) {
        double[] x = trade.points().stream().mapToDouble(p -> axes.get(0).in(p.values()[0])).toArray();
        double[] y = trade.points().stream().mapToDouble(o.of()).toArray();
        List<ChartLine> lines = new ArrayList<>(List.of(new ChartLine(o.title(), x, y, ChartStyle.of(Stack.COMBINED))));
        if (!Double.isNaN(o.limit())) {
            lines.add(new ChartLine("limit", new double[] {x[0], x[x.length - 1]}, new double[] {o.limit(), o.limit()},
                ChartStyle.LIMIT));
        }
        return new TimeChart("chart-" + o.name(), o.title(), axes.get(0).label(), o.title(), lines);
    }

    private String point(TradeSweep.Point p) {
        return IntStream.range(0, axes.size()).mapToObj(a -> {
            String unit = axes.get(a).unit().text();
            return axes.get(a).path() + " = " + VariedText.brief(axes.get(a).in(p.values()[a])) + (unit.isEmpty() ? "" : " " + unit);
        }).collect(Collectors.joining(", "));
    }

    private long met() {
        return trade.points().stream().filter(p -> Boolean.TRUE.equals(p.met())).count();
    }

    private List<String> sentences() {
        List<String> s = new ArrayList<>();
        s.add(trade.points().size() + " designs; " + met() + " of them " + (met() == 1 ? "meets" : "meet") + " every requirement.");
        if (trade.best() >= 0) {
            TradeSweep.Point p = trade.points().get(trade.best());
            s.add((Boolean.TRUE.equals(p.met()) ? "Best of those: " : "Largest margin: ") + point(p) + ", worst margin "
                + QuantityText.db(p.marginDb()) + " at " + QuantityText.hz(p.worstHz()) + " on " + p.worst() + ".");
        }
        return s;
    }

    private void fields(Json json) {
        json.field("title", trade.design().title());
        json.objects("varied", axes, v -> json.field("of", v.path()).field("from", v.from()).field("to", v.to())
            .field("unit", v.unit().text()).field("steps", v.of().steps()));
        json.field("designs", trade.points().size()).field("designs_met", met());
        if (trade.best() >= 0) {
            TradeSweep.Point p = trade.points().get(trade.best());
            json.object("best", () -> {
                for (int a = 0; a < axes.size(); a++) {
                    json.field(axes.get(a).column(), axes.get(a).in(p.values()[a]));
                }
                json.field("worst_margin_db", p.marginDb()).field("frequency_hz", p.worstHz()).field("axis", p.worst())
                    .field("coverage_share", p.coverage()).field("jitter_rad", p.jitter()).field("requirement_met", p.met());
            });
        }
    }
}
