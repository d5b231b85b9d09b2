package quietband.window.card;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import quietband.demand.ResidualPoint;
import quietband.model.Axis;
import quietband.model.Stack;
import quietband.report.file.QuantityText;
import quietband.report.page.CauseName;
import quietband.response.Contribution;
import quietband.response.FrequencyTable;
import quietband.window.chart.Theme;
import quietband.window.work.BackgroundFigures;
import quietband.window.work.RoleFigures;

/** What the residual is made of where it is worst: each cause alone, the largest first. */
public final class CausesCard extends FigureCard {

    private static final long serialVersionUID = 1;

    public CausesCard(Theme theme) {
        super("What is left at the worst point", "Left", theme);
    }

    private static List<Contribution> causes(BackgroundFigures f) {
        return f.details().flatMap(RoleFigures::worst).map(FrequencyTable.Row::contributions).orElse(List.of()).stream()
            .sorted(Comparator.comparingDouble((Contribution c) -> -alone(f, c))).toList();
    }

    private static double alone(BackgroundFigures f, Contribution c) {
        ResidualPoint w = f.assessment().verdict(f.assessment().fullest()).worst();
        Axis axis = Axis.of(w.axis());
        double[] y = c.alone();
        return axis == null ? Math.sqrt(y[0] * y[0] + y[1] * y[1] + y[2] * y[2]) : y[axis.ordinal()];
    }

    @Override
    String words(BackgroundFigures f) {
        return causes(f).stream().map(c -> CauseName.of(c.cause()) + " " + QuantityText.ppb(alone(f, c)) + " ppb/g")
            .collect(Collectors.joining(", "));
    }

    @Override
    void draw(Graphics2D g, BackgroundFigures f, int width, int height) {
        List<Contribution> causes = causes(f);
        if (causes.isEmpty()) {
            text(g, f.details().isEmpty() ? "" : "No cancellation: nothing is cancelled.", 0, theme().px(16), theme().faint(), Font.PLAIN);
            return;
        }
        double most = Math.max(alone(f, causes.get(0)), 1e-30);
        double row = Math.min(theme().px(20), (height - theme().px(16)) / (double) causes.size());
        double left = theme().px(126);
        double scale = (width - left - theme().px(64)) / most;
        for (int i = 0; i < causes.size(); i++) {
            double y = alone(f, causes.get(i));
            double base = (i + 0.75) * row;
            text(g, CauseName.of(causes.get(i).cause()), 0, base, theme().ink(), i == 0 ? Font.BOLD : Font.PLAIN);
            g.setColor(theme().of(Stack.CANCELLED));
            g.fill(new Rectangle2D.Double(left, base - row * 0.55, Math.max(1, y * scale), row * 0.6));
            text(g, QuantityText.ppb(y), left + y * scale + theme().px(4), base, theme().ink(), Font.PLAIN);
        }
        text(g, "ppb/g with that cause alone", 0, height - theme().px(1), theme().faint(), Font.PLAIN);
    }
}
