package quietband.report.shaker;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import quietband.identification.shaker.AxisSensitivity;
import quietband.identification.shaker.ResonatorSensitivity;
import quietband.identification.shaker.ShakerPoint;
import quietband.identification.shaker.ShakerPoint.Mark;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.spectrum.LogGrid;

/** Sensitivity of a resonator over frequency: readings, those that do not count, the fitted curve. */
final class ShakerCharts {

    private static final int CURVE = 500;

    private ShakerCharts() { }

    /**
     * One axis.
     *
     * @param number of the resonator in the run, from 0
     */
    static FrequencyChart of(ResonatorSensitivity unit, AxisSensitivity a, int number) {
        List<ShakerPoint> points = a.points().stream().sorted(Comparator.comparingDouble(p -> p.reading().frequencyHz())).toList();
        List<ChartLine> lines = new ArrayList<>();
        lines.add(dots("readings", points, p -> p.mark() == Mark.USED, ChartStyle.number(0)));
        if (points.stream().anyMatch(p -> p.mark() != Mark.USED)) {
            lines.add(dots("do not count", points, p -> p.mark() != Mark.USED,
                new ChartStyle(ChartStyle.LIMIT.colour(), 1, List.of(), ChartStyle.number(3).marker())));
        }
        double low = 0.95 * points.get(0).reading().frequencyHz();
        double high = 1.05 * points.get(points.size() - 1).reading().frequencyHz();
        double[] f = LogGrid.between(CURVE, low, high);
        double[] fitted = Arrays.stream(f).map(x -> 1e9 * a.fittedAt(x)).toArray();
        lines.add(0, new ChartLine("fitted", f, fitted, new ChartStyle(ChartStyle.FAINT, 1.2f, List.of(), null)));
        String who = unit.serial().isEmpty() ? "" : unit.serial() + ", ";
        return new FrequencyChart("chart-" + (number + 1) + "-" + a.axis().letter(), "Sensitivity over frequency, " + who + "axis "
            + a.axis().letter(), who + "axis " + a.axis().letter() + ", ppb/g", low, high,
            FrequencyChart.Scale.fitting(lines, 4), lines);
    }

    private static double[] frequencies(List<ShakerPoint> points, Predicate<ShakerPoint> which) {
        return points.stream().filter(which).mapToDouble(p -> p.reading().frequencyHz()).toArray();
    }

    private static ChartLine dots(String name, List<ShakerPoint> points, Predicate<ShakerPoint> which, ChartStyle look) {
        return new ChartLine(name, frequencies(points, which), points.stream().filter(which).mapToDouble(p -> 1e9 * p.perG()).toArray(),
            look, true);
    }
}
