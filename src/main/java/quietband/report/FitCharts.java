package quietband.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import quietband.identification.Fitted;
import quietband.model.Stack;

/** Charts of a fit: per measured curve the magnitude, the phase where it was measured, and what is left. */
final class FitCharts {

    private static final Look BEFORE = Look.NEED_SPRINGS;
    private static final Look AFTER = Look.of(Stack.COMBINED);

    private FitCharts() { }

    static List<FrequencyChart> of(Fitted fit) {
        List<FrequencyChart> charts = new ArrayList<>();
        for (int i = 0; i < fit.curves().size(); i++) {
            Fitted.Curve c = fit.curves().get(i);
            String name = String.format(Locale.ROOT, "%s-%s%s", FitText.quantity(c), c.axis().letter(),
                fit.curves().size() > 3 ? "-" + (i + 1) : "");
            charts.add(magnitude(c, name));
            if (!Double.isNaN(c.points().get(0).measured().phase())) {
                charts.add(phase(c, name));
            }
            charts.add(left(c, name));
        }
        return charts;
    }

    private static FrequencyChart magnitude(Fitted.Curve c, String name) {
        double unit = c.kind().perG() ? 1e9 : 1;
        List<ChartLine> lines = lines(c, p -> unit * p.measured().magnitude(), p -> unit * p.before().magnitude(),
            p -> unit * p.after().magnitude());
        return chart(c, "chart-" + name, "Measured, before and after: ", label(c) + (c.kind().perG() ? ", ppb/g" : ""),
            FrequencyChart.Scale.fitting(lines, 5), lines);
    }

    private static FrequencyChart phase(Fitted.Curve c, String name) {
        List<ChartLine> lines = lines(c, p -> degrees(p.measured().phase()), p -> degrees(p.before().phase()),
            p -> degrees(p.after().phase()));
        return chart(c, "chart-phase-" + name, "Phase measured, before and after: ", "phase of " + label(c) + ", deg",
            new FrequencyChart.Scale(false, -180, 180), lines);
    }

    private static String label(Fitted.Curve c) {
        return FitText.quantity(c) + " " + c.axis().letter();
    }

    private static double degrees(double phase) {
        return Math.toDegrees(Math.IEEEremainder(phase, 2 * Math.PI));
    }

    private static FrequencyChart left(Fitted.Curve c, String name) {
        List<ChartLine> lines = new ArrayList<>();
        lines.add(dots("magnitude", c, Fitted.Point::magnitude, Look.number(0), p -> true));
        lines.add(dots("phase", c, Fitted.Point::phase, Look.number(1), p -> !Double.isNaN(p.phase())));
        lines.removeIf(l -> l.x().length == 0);
        Look edge = new Look(Look.FAINT, 1, List.of(2f, 2f), null);
        double[] x = {c.points().get(0).frequencyHz(), c.points().get(c.points().size() - 1).frequencyHz()};
        lines.add(new ChartLine("two standard uncertainties", x, new double[] {2, 2}, edge));
        lines.add(new ChartLine("", x, new double[] {-2, -2}, edge));
        return chart(c, "chart-residual-" + name, "What is left, in standard uncertainties: ", "measured less fitted, " + label(c),
            new FrequencyChart.Scale(false, -6, 6), lines);
    }

    private static List<ChartLine> lines(Fitted.Curve c, ToDoubleFunction<Fitted.Point> measured,
                                         ToDoubleFunction<Fitted.Point> before, ToDoubleFunction<Fitted.Point> after) {
        double[] x = c.points().stream().mapToDouble(Fitted.Point::frequencyHz).toArray();
        List<ChartLine> lines = new ArrayList<>();
        lines.add(dots("measured", c, measured, Look.number(0), p -> !p.outlier()));
        Look flag = new Look(Look.LIMIT.colour(), 1, List.of(), Look.number(3).marker());
        lines.add(dots("measured, left out", c, measured, flag, Fitted.Point::outlier));
        lines.removeIf(l -> l.x().length == 0);
        lines.add(new ChartLine("before", x, c.points().stream().mapToDouble(before).toArray(), BEFORE));
        lines.add(new ChartLine("after", x, c.points().stream().mapToDouble(after).toArray(), AFTER));
        return lines;
    }

    private static ChartLine dots(String name, Fitted.Curve c, ToDoubleFunction<Fitted.Point> value, Look look,
                                  Predicate<Fitted.Point> which) {
        List<Fitted.Point> own = c.points().stream().filter(which).toList();
        return new ChartLine(name, own.stream().mapToDouble(Fitted.Point::frequencyHz).toArray(),
            own.stream().mapToDouble(value).toArray(), look, true);
    }

    private static FrequencyChart chart(Fitted.Curve c, String name, String title, String unit, FrequencyChart.Scale scale,
                                        List<ChartLine> lines) {
        double low = c.points().get(0).frequencyHz();
        double high = c.points().get(c.points().size() - 1).frequencyHz();
        return new FrequencyChart(name, title + c.file() + ", axis " + c.axis().letter(), unit, low * 0.98, high * 1.02, scale, lines);
    }
}
