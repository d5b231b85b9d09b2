package quietband.report.springs;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.tuning.springs.SpringAnswer;
import quietband.tuning.springs.TravelOverFrequency;

/** Charts of springs. */
final class SpringCharts {

    private SpringCharts() { }

    /** Sag and travel against the natural frequency, with the clearance and where the design stands. */
    static FrequencyChart travel(SpringAnswer a) {
        TravelOverFrequency c = a.curve();
        List<ChartLine> lines = new ArrayList<>();
        lines.add(new ChartLine("sag under 1 g", c.cornerHz(), mm(c.sag()), ChartStyle.number(0)));
        if (c.sustained()[0] > 0) {
            lines.add(new ChartLine("sustained", c.cornerHz(), mm(c.sustained()), ChartStyle.number(2)));
        }
        if (c.shock()[0] > 0) {
            lines.add(new ChartLine("shock", c.cornerHz(), mm(c.shock()), ChartStyle.of(Stack.COMBINED)));
        }
        double from = c.cornerHz()[0];
        double to = c.cornerHz()[c.cornerHz().length - 1];
        a.changed().design().platform().orElseThrow().clearance().ifPresent(clear -> {
            double least = Math.min(clear.x(), Math.min(clear.y(), clear.z()));
            if (least > 0) {
                lines.add(new ChartLine("the box's least clearance", new double[] {from, to},
                    new double[] {1e3 * least, 1e3 * least},
                    ChartStyle.LIMIT));
            }
        });
        double[] corners = Axis.ALL.stream().mapToDouble(x -> a.cornerHz().get(x)).sorted().toArray();
        double[] counted = new double[3];
        Arrays.fill(counted, 1e3 * counted(a));
        if (counted[0] > 0) {
            lines.add(new ChartLine("counted, at this design's natural frequencies", corners, counted, ChartStyle.number(3), true));
        }
        return new FrequencyChart("chart-travel", "Sag and travel against the natural frequency", "travel, mm", from, to,
            FrequencyChart.Scale.decades(lines, 5), lines, "natural frequency, Hz");
    }

    /**
     * What a tenfold reduction from a frequency on asks for: travel each way and edge of the box, the body as it is.
     * Empty where damping keeps the platform from a tenfold reduction.
     */
    static Optional<FrequencyChart> box(SpringAnswer a) {
        TravelOverFrequency c = a.curve();
        if (Double.isNaN(a.tenfold())) {
            return Optional.empty();
        }
        int n = c.cornerHz().length;
        double[] from = new double[n];
        double[] travel = new double[n];
        double[] box = new double[n];
        for (int i = 0; i < n; i++) {
            from[i] = a.tenfold() * c.cornerHz()[i];
            travel[i] = 1e3 * a.tenfoldTravel(from[i]);
            box[i] = 1e3 * a.tenfoldBox(from[i]);
        }
        List<ChartLine> lines = new ArrayList<>(List.of(new ChartLine("largest edge of the box inside", from, box,
            ChartStyle.of(Stack.COMBINED)),
            new ChartLine("travel each way", from, travel, ChartStyle.number(1))));
        Vec limit = a.changed().design().platform().orElseThrow().boxLimit();
        double edge = Axis.ALL.stream().mapToDouble(limit::get).filter(Double::isFinite).max().orElse(Double.NaN);
        if (edge > 0) {
            lines.add(new ChartLine("largest box allowed", new double[] {from[0], from[n - 1]}, new double[] {1e3 * edge, 1e3 * edge},
                ChartStyle.LIMIT));
        }
        if (from[0] < 10 && from[n - 1] > 10) {
            lines.add(new ChartLine("from 10 Hz on", new double[] {10, 10},
                new double[] {1e3 * a.tenfoldBox(10), 1e3 * a.tenfoldTravel(10)}, ChartStyle.number(0), true));
        }
        lines.add(new ChartLine("this design", new double[] {a.tenfoldFromHz()}, new double[] {1e3 * compact(a)},
            ChartStyle.number(3), true));
        return Optional.of(new FrequencyChart("chart-box", "What a tenfold reduction from a frequency on asks for", "mm", from[0],
            from[n - 1], FrequencyChart.Scale.decades(lines, 6), lines, "tenfold reduction from here on, Hz"));
    }

    /** Largest edge of the box this design needs inside, m. */
    static double compact(SpringAnswer a) {
        return a.body() + 2 * counted(a);
    }

    private static double counted(SpringAnswer a) {
        return Axis.ALL.stream().mapToDouble(a.after().travel().orElseThrow().counted()::get).max().orElse(0);
    }

    private static double[] mm(double[] metres) {
        return Arrays.stream(metres).map(v -> v * 1e3).toArray();
    }
}
