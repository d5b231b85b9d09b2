package quietband.report.assess;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import quietband.demand.PhaseNoise;
import quietband.demand.ResidualDemand;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.page.CauseName;
import quietband.response.Cause;
import quietband.response.Contribution;
import quietband.response.FrequencyTable;
import quietband.study.assess.NeededAttenuation;

/** The charts of an assessment. */
final class AssessmentCharts {

    private static final double PPB = 1e9;

    private final Design design;
    private final FrequencyTable table;
    private final ResidualDemand demand;
    private final double[] f;

    /** For a design and its values on the program's own grid. */
    AssessmentCharts(Design design, FrequencyTable table) {
        this.design = design;
        this.table = table;
        this.demand = new ResidualDemand(design);
        this.f = column(FrequencyTable.Row::frequencyHz);
    }

    /** Every chart that the design has, in the order of the page. */
    List<FrequencyChart> all() {
        List<FrequencyChart> charts = new ArrayList<>();
        for (Axis axis : Axis.ALL) {
            charts.add(residual("chart-residual-" + axis.letter(), "axis " + axis.letter(), axis.ordinal()));
        }
        charts.add(residual("chart-residual-vector", "vector of the three axes", 3));
        if (table.stacks().size() > 1) {
            charts.add(reduction());
        }
        if (demand.asked() && table.stacks().contains(Stack.COMBINED)) {
            charts.add(needed());
        }
        if (!table.noiseRows().isEmpty()) {
            charts.add(phaseNoise());
        }
        if (Stack.fullest(design).corrected()) {
            charts.add(contributions());
        }
        return charts;
    }

    private double[] column(ToDoubleFunction<FrequencyTable.Row> value) {
        return table.rows().stream().mapToDouble(value).toArray();
    }

    private FrequencyChart chart(String name, String title, String unit, FrequencyChart.Scale scale, List<ChartLine> lines) {
        return new FrequencyChart(name, title, unit, design.requirement().fromHz(), design.requirement().toHz(), scale, lines);
    }

    private double value(FrequencyTable.Row row, int stack, int axis) {
        return axis == 3 ? row.vectorPerG(stack) : row.residualPerG()[stack][axis];
    }

    /** @param axis 0 to 2, or 3 for the vector */
    private FrequencyChart residual(String name, String of, int axis) {
        List<ChartLine> lines = new ArrayList<>();
        for (int s = 0; s < table.stacks().size(); s++) {
            int stack = s;
            lines.add(new ChartLine(table.stacks().get(s).key(), f, column(r -> value(r, stack, axis) * PPB),
                ChartStyle.of(table.stacks().get(s))));
        }
        if (demand.judges(axis)) {
            lines.add(new ChartLine("limit", f, column(r -> PPB * demand.limit(axis, r.frequencyHz())), ChartStyle.LIMIT));
        }
        return chart(name, "Residual sensitivity over frequency, " + of, "residual, ppb/g",
            FrequencyChart.Scale.decades(lines, 4), lines);
    }

    /** How much less than bolted down, on the axis that gains least. */
    private FrequencyChart reduction() {
        List<ChartLine> lines = new ArrayList<>();
        for (int s = 1; s < table.stacks().size(); s++) {
            int stack = s;
            lines.add(new ChartLine(table.stacks().get(s).key(), f, column(r -> least(r, stack)),
                ChartStyle.of(table.stacks().get(s))));
        }
        return chart("chart-reduction", "Reduction against bare, on the axis that gains least",
            "reduction, dB", FrequencyChart.Scale.even(lines, 10, 120), lines);
    }

    private static double least(FrequencyTable.Row r, int stack) {
        double least = Double.POSITIVE_INFINITY;
        for (int j = 0; j < 3; j++) {
            // an axis without sensitivity has nothing to reduce
            if (r.residualPerG()[0][j] > 1e-6 * r.vectorPerG(0)) {
                least = Math.min(least, 20 * StrictMath.log10(r.residualPerG()[0][j] / r.residualPerG()[stack][j]));
            }
        }
        return Double.isInfinite(least) ? Double.NaN : least;
    }

    private FrequencyChart needed() {
        NeededAttenuation needed = new NeededAttenuation(design, table);
        List<ChartLine> lines = List.of(
            new ChartLine("springs must give", f, column(needed::springsMust), ChartStyle.NEED_SPRINGS),
            new ChartLine("springs give", f, column(needed::springsGive), ChartStyle.SPRINGS),
            new ChartLine("cancellation must give", f, column(needed::correctionMust), ChartStyle.NEED_CORRECTION),
            new ChartLine("cancellation gives", f, column(needed::correctionGives), ChartStyle.CORRECTION));
        return chart("chart-needed", "Needed against delivered: what each measure must give beside the other, and gives",
            "reduction of the worst axis, dB", FrequencyChart.Scale.even(lines, 10, 90), lines);
    }

    private FrequencyChart phaseNoise() {
        int full = table.stacks().size() - 1;
        List<ChartLine> lines = new ArrayList<>();
        List<PhaseNoise.Row> rows = table.noiseRows();
        lines.add(dbc("bare", ChartStyle.of(Stack.BARE), r -> most(r.vibration()[0]) + r.floor()[0]));
        lines.add(dbc("static phase noise", ChartStyle.number(2), FrequencyTable.Row::staticNoise));
        if (design.cancellation().isPresent()) {
            lines.add(dbc("sensor and converter", ChartStyle.number(3), FrequencyTable.Row::sensor));
            lines.add(dbc("tuning port", ChartStyle.number(6), FrequencyTable.Row::tuning));
        }
        if (full > 0) {
            lines.add(dbc("vibration", ChartStyle.number(0), r -> most(r.vibration()[full])));
            lines.add(dbc("total", ChartStyle.of(Stack.COMBINED), r -> most(r.vibration()[full]) + r.floor()[full]));
        }
        if (design.requirement().phaseNoise().isPresent()) {
            lines.add(new ChartLine("limit", f, column(FrequencyTable.Row::limitDbc), ChartStyle.LIMIT));
        }
        lines.removeIf(l -> l.top() == Double.NEGATIVE_INFINITY);
        String driven = rows.size() == 1 ? rows.get(0).label() : "worst axis";
        return chart("chart-phase-noise", "Phase noise at the output and its parts, " + driven, "phase noise, dBc/Hz",
            FrequencyChart.Scale.even(lines, 10, 120), lines);
    }

    private ChartLine dbc(String name, ChartStyle look, ToDoubleFunction<FrequencyTable.Row> power) {
        return new ChartLine(name, f, column(r -> 10 * StrictMath.log10(power.applyAsDouble(r))), look);
    }

    private static double most(double[] values) {
        return Arrays.stream(values).max().orElse(0);
    }

    private FrequencyChart contributions() {
        int full = table.stacks().size() - 1;
        List<ChartLine> lines = new ArrayList<>();
        for (Cause cause : Cause.values()) {
            lines.add(new ChartLine(CauseName.of(cause), f, column(r -> alone(r, cause) * PPB),
                ChartStyle.number(cause.ordinal())));
        }
        lines.removeIf(l -> l.top() < 1e-9);
        lines.add(new ChartLine("all of them", f, column(r -> most(r.residualPerG()[full]) * PPB), ChartStyle.of(Stack.COMBINED)));
        if (demand.asked()) {
            lines.add(new ChartLine("limit", f, column(r -> demand.limit(ResidualDemand.VECTOR, r.frequencyHz()) * PPB), ChartStyle.LIMIT));
        }
        return chart("chart-contributions", "What each cause alone would leave, worst axis", "residual, ppb/g",
            FrequencyChart.Scale.decades(lines, 4), lines);
    }

    private static double alone(FrequencyTable.Row r, Cause cause) {
        return r.contributions().stream().filter(c -> c.cause() == cause).map(Contribution::alone)
            .mapToDouble(AssessmentCharts::most).findFirst().orElse(0);
    }
}
