package quietband.report.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import quietband.identification.fit.FitResult;
import quietband.model.Stack;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.NumberFormat;

/** Charts of a fit: per measured curve the magnitude, the phase where it was measured, and what is left. */
final class FitCharts {

    private static final ChartStyle BEFORE = ChartStyle.NEED_SPRINGS;
    private static final ChartStyle AFTER = ChartStyle.of(Stack.COMBINED);

    private FitCharts() { }

    static List<FrequencyChart> of(FitResult fit) {
        List<FrequencyChart> charts = new ArrayList<>();
        for (int i = 0; i < fit.curves().size(); i++) {
            FitResult.Curve c = fit.curves().get(i);
            String name = NumberFormat.text("%s-%s%s", FitText.quantity(c), c.axis().letter(),
                fit.curves().size() > 3 ? "-" + (i + 1) : "");
            charts.add(magnitude(c, name));
            if (!Double.isNaN(c.points().get(0).measured().phase())) {
                charts.add(phase(c, name));
            }
            charts.add(left(c, name));
        }
        return charts;
    }

    private static FrequencyChart magnitude(FitResult.Curve c, String name) {
        double unit = c.kind().perG() ? 1e9 : 1;
        List<ChartLine> lines = lines(c, p -> unit * p.measured().magnitude(), p -> unit * p.before().magnitude(),
            p -> unit * p.after().magnitude());
        return chart(c, "chart-" + name, "Measured, before and after: ", label(c) + (c.kind().perG() ? ", ppb/g" : ""),
            FrequencyChart.Scale.fitting(lines, 5), lines);
    }

    private static FrequencyChart phase(FitResult.Curve c, String name) {
        List<ChartLine> lines = lines(c, p -> degrees(p.measured().phase()), p -> degrees(p.before().phase()),
            p -> degrees(p.after().phase()));
        return chart(c, "chart-phase-" + name, "Phase measured, before and after: ", "phase of " + label(c) + ", deg",
            new FrequencyChart.Scale(false, -180, 180), lines);
    }

    private static String label(FitResult.Curve c) {
        return FitText.quantity(c) + " " + c.axis().letter();
    }

    private static double degrees(double phase) {
        return Math.toDegrees(Math.IEEEremainder(phase, 2 * Math.PI));
    }

    private static FrequencyChart left(FitResult.Curve c, String name) {
        List<ChartLine> lines = new ArrayList<>();
        lines.add(dots("magnitude", c, FitResult.Point::magnitude, ChartStyle.number(0), p -> true));
        lines.add(dots("phase", c, FitResult.Point::phase, ChartStyle.number(1), p -> !Double.isNaN(p.phase())));
        lines.removeIf(l -> l.x().length == 0);
        ChartStyle edge = new ChartStyle(ChartStyle.FAINT, 1, List.of(2f, 2f), null);
        double[] x = {c.points().get(0).frequencyHz(), c.points().get(c.points().size() - 1).frequencyHz()};
        lines.add(new ChartLine("two standard uncertainties", x, new double[] {2, 2}, edge));
        lines.add(new ChartLine("", x, new double[] {-2, -2}, edge));
        return chart(c, "chart-residual-" + name, "What is left, in standard uncertainties: ", "measured less fitted, " + label(c),
            new FrequencyChart.Scale(false, -6, 6), lines);
    }

    private static List<ChartLine> lines(FitResult.Curve c, ToDoubleFunction<FitResult.Point> measured,
                                         ToDoubleFunction<FitResult.Point> before, ToDoubleFunction<FitResult.Point> after) {
        double[] x = c.points().stream().mapToDouble(FitResult.Point::frequencyHz).toArray();
        List<ChartLine> lines = new ArrayList<>();
        lines.add(dots("measured", c, measured, ChartStyle.number(0), p -> !p.outlier()));
        ChartStyle flag = new ChartStyle(ChartStyle.LIMIT.colour(), 1, List.of(), ChartStyle.number(3).marker());
        lines.add(dots("measured, left out", c, measured, flag, FitResult.Point::outlier));
        lines.removeIf(l -> l.x().length == 0);
        lines.add(new ChartLine("before", x, c.points().stream().mapToDouble(before).toArray(), BEFORE));
        lines.add(new ChartLine("after", x, c.points().stream().mapToDouble(after).toArray(), AFTER));
        return lines;
    }

    private static ChartLine dots(String name, FitResult.Curve c, ToDoubleFunction<FitResult.Point> value, ChartStyle look,
                                  Predicate<FitResult.Point> which) {
        List<FitResult.Point> own = c.points().stream().filter(which).toList();
        return new ChartLine(name, own.stream().mapToDouble(FitResult.Point::frequencyHz).toArray(),
            own.stream().mapToDouble(value).toArray(), look, true);
    }

    private static FrequencyChart chart(FitResult.Curve c, String name, String title, String unit, FrequencyChart.Scale scale,
                                        List<ChartLine> lines) {
        double low = c.points().get(0).frequencyHz();
        double high = c.points().get(c.points().size() - 1).frequencyHz();
        return new FrequencyChart(name, title + c.file() + ", axis " + c.axis().letter(), unit, low * 0.98, high * 1.02, scale, lines);
    }
}
