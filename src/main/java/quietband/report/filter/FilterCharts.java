package quietband.report.filter;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.hipparchus.complex.Complex;
import quietband.cancellation.FilterResponse;
import quietband.filter.IdealFilter;
import quietband.filter.allowed.AllowedErrors;
import quietband.filter.design.FilterFacts;
import quietband.filter.design.FilterResult;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.chart.HeatMap;
import quietband.report.file.QuantityText;
import quietband.response.ResidualCurves;
import quietband.spectrum.LogGrid;

/** Charts of a filter: what is ideal and what is reached, residual before and after, allowed errors. */
final class FilterCharts {

    private static final int POINTS = 300;
    private static final double APART = 1e-3;
    private static final int REGION = 61;

    private final FilterResult result;
    private final Design design;
    private final double from;
    private final double to;

    FilterCharts(FilterResult result) {
        this.result = result;
        this.design = result.changed();
        this.from = design.requirement().fromHz();
        this.to = design.requirement().toHz();
    }

    /** Three filters at a frequency. */
    private interface Filters {
        Complex[] at(double f);
    }

    private List<FrequencyChart> responses() {
        IdealFilter ideal = new IdealFilter(design, result.task().measured());
        double rate = design.cancellation().orElseThrow().path().sampleRateHz();
        List<FilterResponse> own = result.found().filters().stream().map(f -> new FilterResponse(f, rate)).toList();
        Filters reached = f -> new Complex[] {own.get(0).at(f), own.get(1).at(f), own.get(2).at(f)};
        double[] grid = LogGrid.between(POINTS, from, Math.min(to, 0.499 * rate));
        double[][][] wanted = values(ideal::at, grid);
        double[][][] is = values(reached, grid);
        String[] titles = {"Magnitude of the filters, ideal and reached", "Phase of the filters, ideal and reached",
            "Group delay of the filters, ideal and reached; an advance is negative"};
        String[] names = {"chart-magnitude", "chart-phase", "chart-group-delay"};
        String[] units = {"magnitude, dB", "phase, deg", "group delay, us"};
        double[] least = {0.5, 2, 5};
        List<FrequencyChart> charts = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
            List<ChartLine> lines = new ArrayList<>();
            for (Axis axis : Axis.ALL) {
                ChartStyle look = ChartStyle.number(axis.ordinal());
                if (!Double.isNaN(wanted[k][axis.ordinal()][0])) {
                    lines.add(new ChartLine("ideal " + axis.letter(), grid, wanted[k][axis.ordinal()],
                        new ChartStyle(look.colour(), 3.4f, List.of(1.5f, 5f), null)));
                }
                lines.add(new ChartLine("reached " + axis.letter(), grid, is[k][axis.ordinal()],
                    new ChartStyle(look.colour(), 1.6f, List.of(), look.marker())));
            }
            charts.add(new FrequencyChart(names[k], titles[k], units[k], from, to, even(lines, least[k]), lines));
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

    /** Magnitude in dB, phase in deg, group delay in us of three filters on a grid. */
    private static double[][][] values(Filters filters, double[] grid) {
        double[][][] v = new double[3][3][grid.length];
        for (int n = 0; n < grid.length; n++) {
            Complex[] at = filters.at(grid[n]);
            Complex[] above = filters.at(grid[n] * (1 + APART));
            Complex[] below = filters.at(grid[n] * (1 - APART));
            for (int i = 0; i < 3; i++) {
                v[0][i][n] = 20 * StrictMath.log10(at[i].norm());
                double phase = Math.toDegrees(StrictMath.atan2(at[i].getImaginary(), at[i].getReal()));
                v[1][i][n] = n == 0 ? phase : v[1][i][n - 1] + Math.IEEEremainder(phase - v[1][i][n - 1], 360);
                Complex turn = above[i].multiply(below[i].conjugate());
                v[2][i][n] = -1e6 * StrictMath.atan2(turn.getImaginary(), turn.getReal()) / (4 * Math.PI * grid[n] * APART);
            }
        }
        return v;
    }

    /** Worst axis with the old filter and with the new one, and without correction. */
    private FrequencyChart residual() {
        ResidualCurves before = ResidualCurves.of(result.before().design(), POINTS);
        ResidualCurves after = ResidualCurves.of(design, POINTS);
        Stack full = Stack.fullest(design);
        Stack off = full.sprung() ? Stack.ISOLATED : Stack.BARE;
        List<ChartLine> lines = new ArrayList<>();
        lines.add(line("without correction", after, off, ChartStyle.of(off)));
        lines.add(line("before", before, full, ChartStyle.NEED_CORRECTION));
        lines.add(line("after", after, full, ChartStyle.of(Stack.COMBINED)));
        if (after.limited()) {
            double[] limit = after.limitPerG()[ResidualCurves.VECTOR].clone();
            for (int n = 0; n < limit.length; n++) {
                limit[n] *= 1e9;
            }
            lines.add(new ChartLine("limit", after.frequencyHz(), limit, ChartStyle.LIMIT));
        }
        return new FrequencyChart("chart-residual", "Residual of the worst axis, before and after", "residual, ppb/g", from, to,
            FrequencyChart.Scale.decades(lines, 5), lines);
    }

    private ChartLine line(String name, ResidualCurves curves, Stack stack, ChartStyle look) {
        int s = curves.stacks().indexOf(stack);
        double[] worst = Arrays.stream(curves.judgedPerG(s)).map(y -> 1e9 * y).toArray();
        return new ChartLine(name, curves.frequencyHz(), worst, look);
    }

    /** Every chart with its file's name: the responses, residual, and with a limit the region of gain and phase. */
    List<Drawn> all(FilterFacts facts) {
        List<Drawn> all = new ArrayList<>();
        all.add(new Drawn("chart-residual", residual().svg()));
        for (FrequencyChart chart : responses()) {
            all.add(new Drawn(chart.name(), chart.svg()));
        }
        if (!facts.least().isEmpty()) {
            critical(facts, AllowedErrors.Kind.GAIN).ifPresent(least -> all.add(new Drawn("chart-region", region(facts, least).svg())));
        }
        return all;
    }

    /** A picture. */
    record Drawn(String name, String svg) { }

    /** The sensor and frequency that take least of one kind of error. */
    static java.util.Optional<AllowedErrors.Least> critical(FilterFacts facts, AllowedErrors.Kind kind) {
        return facts.least().stream().filter(l -> l.kind() == kind && Double.isFinite(l.value()))
            .min(java.util.Comparator.comparingDouble(l -> Math.abs(l.value())));
    }

    private static HeatMap region(FilterFacts facts, AllowedErrors.Least least) {
        AllowedErrors allowed = facts.allowed();
        java.util.Map<AllowedErrors.Kind, AllowedErrors.Span> spans = allowed.at(least.axis(), least.frequencyHz());
        double[] gain = ends(spans.get(AllowedErrors.Kind.GAIN), 0.01);
        double[] phase = ends(spans.get(AllowedErrors.Kind.PHASE), Math.toRadians(1));
        double[][] z = new double[REGION][REGION];
        for (int n = 0; n < REGION; n++) {
            for (int m = 0; m < REGION; m++) {
                z[n][m] = Math.min(4, allowed.ratio(least.axis(), least.frequencyHz(), gain[0] + (gain[1] - gain[0]) * m / (REGION - 1),
                    phase[0] + (phase[1] - phase[0]) * n / (REGION - 1)));
            }
        }
        double[] now = {100 * allowed.now(AllowedErrors.Kind.GAIN, least.axis()), Math.toDegrees(allowed.now(
            AllowedErrors.Kind.PHASE, least.axis()))};
        String title = String.format(Locale.ROOT, "Largest residual over its limit at %s, sensor %s; inside the line it holds",
            QuantityText.hz(least.frequencyHz()), least.axis().letter());
        return new HeatMap("chart-region", title, new HeatMap.Scale("gain error, %", 100 * gain[0], 100 * gain[1]),
            new HeatMap.Scale("phase error, deg", Math.toDegrees(phase[0]), Math.toDegrees(phase[1])), z, 1, now);
    }

    /** Ends somewhat beyond a span, on quarters of a unit that divides well. */
    private static double[] ends(AllowedErrors.Span span, double unit) {
        double wide = Math.min(2, span.high() - span.low());
        double step = unit * StrictMath.pow(10, Math.floor(StrictMath.log10(wide / unit / 2)));
        double middle = Double.isFinite(span.low() + span.high()) ? (span.low() + span.high()) / 2 : 0;
        double from = step * Math.floor((middle - 0.65 * wide) / step);
        double quarter = step * Math.ceil((middle + 0.65 * wide - from) / step / 4);
        return new double[] {from, from + 4 * quarter};
    }
}
