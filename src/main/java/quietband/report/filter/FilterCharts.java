package quietband.report.filter;

import java.util.ArrayList;
import java.util.List;
import quietband.model.Axis;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.chart.HeatMap;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.response.ResidualCurves;
import quietband.study.filter.AllowedTable;
import quietband.study.filter.FilterCurves;
import quietband.study.filter.FilterDesign;

/** Charts of a filter: what is ideal and what is reached, residual before and after, allowed errors. */
final class FilterCharts {

    private static final String[] NAMES = {"chart-magnitude", "chart-phase", "chart-group-delay"};
    private static final String[] TITLES = {"Magnitude of the filters, ideal and reached", "Phase of the filters, ideal and reached",
        "Group delay of the filters, ideal and reached; an advance is negative"};
    private static final String[] UNITS = {"magnitude, dB", "phase, deg", "group delay, us"};
    private static final double[] LEAST = {0.5, 2, 5};

    private FilterCharts() { }

    /** Magnitude, phase and group delay. */
    static List<FrequencyChart> responses(FilterDesign d) {
        FilterCurves curves = d.curves();
        Requirement r = d.result().changed().requirement();
        List<FrequencyChart> charts = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
            List<ChartLine> lines = new ArrayList<>();
            for (Axis axis : Axis.ALL) {
                ChartStyle look = ChartStyle.number(axis.ordinal());
                double[] ideal = curves.ideal()[k][axis.ordinal()];
                if (!Double.isNaN(ideal[0])) {
                    lines.add(new ChartLine("ideal " + axis.letter(), curves.frequencyHz(), ideal,
                        new ChartStyle(look.colour(), 3.4f, List.of(1.5f, 5f), null)));
                }
                lines.add(new ChartLine("reached " + axis.letter(), curves.frequencyHz(), curves.reached()[k][axis.ordinal()],
                    new ChartStyle(look.colour(), 1.6f, List.of(), look.marker())));
            }
            charts.add(new FrequencyChart(NAMES[k], TITLES[k], UNITS[k], r.fromHz(), r.toHz(), even(lines, LEAST[k]), lines));
        }
        return charts;
    }

    /** Even steps of 1, 2 or 5 that hold every line. */
    private static FrequencyChart.Scale even(List<ChartLine> lines, double least) {
        double top = lines.stream().mapToDouble(ChartLine::top).max().orElse(1);
        double bottom = lines.stream().mapToDouble(l -> l.bottom(false)).min().orElse(0);
        double span = Math.max(least, top - bottom);
        double decade = StrictMath.pow(10, Math.floor(StrictMath.log10(span / 8)));
        double share = span / 8 / decade;
        double step = decade * (share <= 2 ? 2 : share <= 5 ? 5 : 10);
        return FrequencyChart.Scale.even(lines, step, 1e9);
    }

    /** Worst axis with the old filter and with the new one, and without cancellation. */
    static FrequencyChart residual(FilterDesign d) {
        ResidualCurves after = d.curves().after();
        Requirement r = d.result().changed().requirement();
        Stack full = Stack.fullest(d.result().changed());
        Stack off = full.sprung() ? Stack.ISOLATED : Stack.BARE;
        List<ChartLine> lines = new ArrayList<>();
        lines.add(line("without cancellation", after, off, ChartStyle.of(off)));
        lines.add(line("before", d.curves().before(), full, ChartStyle.NEED_CORRECTION));
        lines.add(line("after", after, full, ChartStyle.of(Stack.COMBINED)));
        if (after.limited()) {
            lines.add(ChartLine.ppb("limit", after.frequencyHz(), after.limitPerG()[ResidualCurves.VECTOR], ChartStyle.LIMIT));
        }
        return new FrequencyChart("chart-residual", "Residual of the worst axis, before and after", "residual, ppb/g", r.fromHz(), r.toHz(),
            FrequencyChart.Scale.decades(lines, 5), lines);
    }

    private static ChartLine line(String name, ResidualCurves curves, Stack stack, ChartStyle look) {
        return ChartLine.ppb(name, curves.frequencyHz(), curves.judgedPerG(curves.stacks().indexOf(stack)), look);
    }

    /** Gain and phase error together. */
    static HeatMap region(AllowedTable.Region r) {
        return new HeatMap("chart-region", NumberFormat.text("Largest residual over its limit at %s, sensor %s; inside the line it "
            + "holds", QuantityText.hz(r.least().frequencyHz()), r.least().axis().letter()),
            new HeatMap.Scale("gain error, %", 100 * r.gain()[0], 100 * r.gain()[1]), new HeatMap.Scale("phase error, deg",
            Math.toDegrees(r.phase()[0]), Math.toDegrees(r.phase()[1])), r.over(), 1,
            new double[] {100 * r.now()[0], Math.toDegrees(r.now()[1])});
    }
}
