package quietband.window;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.util.List;
import java.util.function.ToDoubleFunction;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.report.Look;
import quietband.report.Needed;
import quietband.response.FrequencyTable;
import quietband.response.ResidualLimit;

/** What springs and correction must give beside the other, and what they give. */
final class NeededCard extends Card {

    private static final long serialVersionUID = 1;

    NeededCard(Theme theme) {
        super("Needed and delivered, dB", "Needed", theme);
    }

    @Override
    String words(Figures f) {
        return "reduction that springs and correction must give and give";
    }

    @Override
    void draw(Graphics2D g, Figures f, int width, int height) {
        boolean both = f.assessment().fullest() == Stack.COMBINED && new ResidualLimit(f.assessment().design()).asked();
        if (f.details().isEmpty() || !both) {
            text(g, both ? "" : "Needs platform, correction and a limit.", 0, theme().px(16), theme().faint(), Font.PLAIN);
            return;
        }
        FrequencyTable table = f.details().get().table();
        Needed needed = new Needed(f.assessment().design(), table);
        double[] x = table.rows().stream().mapToDouble(FrequencyTable.Row::frequencyHz).toArray();
        Color springs = theme().of(Stack.ISOLATED);
        Color correction = theme().of(Stack.CANCELLED);
        ThemedChart chart = new ThemedChart(theme());
        add(chart, x, table.rows(), needed::springsMust, springs, Look.NEED_SPRINGS);
        add(chart, x, table.rows(), needed::correctionMust, correction, Look.NEED_CORRECTION);
        add(chart, x, table.rows(), needed::springsGive, springs, Look.SPRINGS);
        add(chart, x, table.rows(), needed::correctionGives, correction, Look.CORRECTION);
        Requirement band = f.assessment().design().requirement();
        chart.draw(g, chart.decades(null, band.fromHz(), band.toHz()), chart.even(null, -40), 0, 0, width, height - theme().px(30));
        double y = height - theme().px(16);
        text(g, "\u2501 springs", 0, y, springs, Font.PLAIN);
        text(g, "\u2501 correction", width * 0.4, y, correction, Font.PLAIN);
        text(g, "dotted: needed for the limit", 0, y + theme().px(15), theme().faint(), Font.PLAIN);
    }

    private void add(ThemedChart chart, double[] x, List<FrequencyTable.Row> rows, ToDoubleFunction<FrequencyTable.Row> value,
                     Color colour, Look look) {
        chart.line(x, rows.stream().mapToDouble(value).toArray(), colour, theme().stroke(look));
    }
}
