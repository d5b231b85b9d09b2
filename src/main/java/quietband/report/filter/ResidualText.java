package quietband.report.filter;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import quietband.demand.ResidualDemand;
import quietband.demand.ResidualPoint;
import quietband.filter.FilteredResidual;
import quietband.model.Axis;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.study.filter.ResidualChange;

/** A residual by a path that the model does not hold, in words and charts. */
final class ResidualText {

    private ResidualText() { }

    static void worst(Json json, String name, ResidualPoint w) {
        json.object(name, () -> json.field("worst_ratio", w.ratio()).field("frequency_hz", w.frequencyHz())
            .field("axis", w.axis()).field("residual_ppb_per_g", 1e9 * w.residualPerG()));
    }

    static String sentence(ResidualPoint w) {
        return NumberFormat.text("worst %s ppb/g at %s, axis %s%s", QuantityText.ppb(w.residualPerG()),
            QuantityText.hz(w.frequencyHz()), w.axis(), Double.isNaN(w.ratio()) ? "" : NumberFormat.text(", margin %.2f dB",
                -FilterReport.decibels(w.ratio())));
    }

    /** Residual of each axis before and after, and its limit. */
    static List<FrequencyChart> charts(String name, String title, Requirement r, ResidualChange change) {
        return Axis.ALL.stream().map(axis -> {
            int j = axis.ordinal();
            List<ChartLine> lines = new ArrayList<>();
            lines.add(line("before", change.before(), w -> w.perG()[j], ChartStyle.NEED_SPRINGS));
            lines.add(line("after", change.after(), w -> w.perG()[j], ChartStyle.of(Stack.COMBINED)));
            ResidualDemand demand = change.before().demand();
            if (demand.asked() && change.before().rows().stream().allMatch(w -> Double.isFinite(demand.limit(j, w.frequencyHz())))) {
                lines.add(line("limit", change.before(), w -> demand.limit(j, w.frequencyHz()), ChartStyle.LIMIT));
            }
            return new FrequencyChart(name + axis.letter(), "Residual along " + axis.letter() + title, axis.letter() + ", ppb/g",
                r.fromHz(), r.toHz(), FrequencyChart.Scale.decades(lines, 5), lines);
        }).toList();
    }

    private static ChartLine line(String name, FilteredResidual of, ToDoubleFunction<FilteredResidual.Row> value, ChartStyle look) {
        return ChartLine.of(name, of.rows(), FilteredResidual.Row::frequencyHz, w -> 1e9 * value.applyAsDouble(w), look);
    }
}
