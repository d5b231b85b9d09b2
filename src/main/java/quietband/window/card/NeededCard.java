package quietband.window.card;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.util.List;
import java.util.function.ToDoubleFunction;
import quietband.demand.ResidualDemand;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.report.chart.ChartStyle;
import quietband.response.FrequencyTable;
import quietband.study.assess.NeededAttenuation;
import quietband.window.chart.Theme;
import quietband.window.chart.ThemedChart;
import quietband.window.work.BackgroundFigures;

/** What springs and cancellation must give beside the other, and what they give. */
public final class NeededCard extends FigureCard {

    private static final long serialVersionUID = 1;

    public NeededCard(Theme theme) {
        super("Needed and delivered, dB", "Needed", theme);
    }

    @Override
    String words(BackgroundFigures f) {
        return "reduction that springs and cancellation must give and give";
    }

    @Override
    void draw(Graphics2D g, BackgroundFigures f, int width, int height) {
        boolean both = f.assessment().fullest() == Stack.COMBINED && new ResidualDemand(f.assessment().design()).asked();
        if (f.details().isEmpty() || !both) {
            text(g, both ? "" : "Needs platform, cancellation and a limit.", 0, theme().px(16), theme().faint(), Font.PLAIN);
            return;
        }
        FrequencyTable table = f.details().get().table();
        NeededAttenuation needed = new NeededAttenuation(f.assessment().design(), table);
        double[] x = table.rows().stream().mapToDouble(FrequencyTable.Row::frequencyHz).toArray();
        Color springs = theme().of(Stack.ISOLATED);
        Color correction = theme().of(Stack.CANCELLED);
        ThemedChart chart = new ThemedChart(theme());
        add(chart, x, table.rows(), needed::springsMust, springs, ChartStyle.NEED_SPRINGS);
        add(chart, x, table.rows(), needed::correctionMust, correction, ChartStyle.NEED_CORRECTION);
        add(chart, x, table.rows(), needed::springsGive, springs, ChartStyle.SPRINGS);
        add(chart, x, table.rows(), needed::correctionGives, correction, ChartStyle.CORRECTION);
        Requirement band = f.assessment().design().requirement();
        chart.draw(g, chart.decades(null, band.fromHz(), band.toHz()), chart.even(null, -40), 0, 0, width, height - theme().px(30));
        double y = height - theme().px(16);
        text(g, "\u2501 springs", 0, y, springs, Font.PLAIN);
        text(g, "\u2501 cancellation", width * 0.4, y, correction, Font.PLAIN);
        text(g, "dotted: needed for the limit", 0, y + theme().px(15), theme().faint(), Font.PLAIN);
    }

    private void add(ThemedChart chart, double[] x, List<FrequencyTable.Row> rows, ToDoubleFunction<FrequencyTable.Row> value,
                     Color colour, ChartStyle look) {
        chart.line(x, rows.stream().mapToDouble(value).toArray(), colour, theme().stroke(look));
    }
}
