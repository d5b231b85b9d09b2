package quietband.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import quietband.identification.AxisSensitivity;
import quietband.identification.ResonatorSensitivity;
import quietband.identification.ShakerPoint;
import quietband.identification.ShakerPoint.Mark;
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
        lines.add(dots("readings", points, p -> p.mark() == Mark.USED, Look.number(0)));
        if (points.stream().anyMatch(p -> p.mark() != Mark.USED)) {
            lines.add(dots("do not count", points, p -> p.mark() != Mark.USED,
                new Look(Look.LIMIT.colour(), 1, List.of(), Look.number(3).marker())));
        }
        double low = 0.95 * points.get(0).reading().frequencyHz();
        double high = 1.05 * points.get(points.size() - 1).reading().frequencyHz();
        double[] f = LogGrid.between(CURVE, low, high);
        double[] fitted = Arrays.stream(f).map(x -> 1e9 * a.fittedAt(x)).toArray();
        lines.add(0, new ChartLine("fitted", f, fitted, new Look(Look.FAINT, 1.2f, List.of(), null)));
        String who = unit.serial().isEmpty() ? "" : unit.serial() + ", ";
        return new FrequencyChart("chart-" + (number + 1) + "-" + a.axis().letter(), "Sensitivity over frequency, " + who + "axis "
            + a.axis().letter(), who + "axis " + a.axis().letter() + ", ppb/g", low, high,
            FrequencyChart.Scale.fitting(lines, 4), lines);
    }

    private static double[] frequencies(List<ShakerPoint> points, Predicate<ShakerPoint> which) {
        return points.stream().filter(which).mapToDouble(p -> p.reading().frequencyHz()).toArray();
    }

    private static ChartLine dots(String name, List<ShakerPoint> points, Predicate<ShakerPoint> which, Look look) {
        return new ChartLine(name, frequencies(points, which), points.stream().filter(which).mapToDouble(p -> 1e9 * p.perG()).toArray(),
            look, true);
    }
}
