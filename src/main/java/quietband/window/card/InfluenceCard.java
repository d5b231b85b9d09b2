package quietband.window.card;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import quietband.model.Stack;
import quietband.report.file.NumberFormat;
import quietband.tolerance.influence.ToleranceInfluence;
import quietband.window.chart.Theme;
import quietband.window.work.MonteCarloProgress;

/** Which tolerance costs the most: what yield would be with each of them halved. */
public final class InfluenceCard extends MonteCarloCard {

    private static final long serialVersionUID = 1;

    public InfluenceCard(Theme theme) {
        super("Yield with one tolerance halved", "Cost", theme);
    }

    private static List<ToleranceInfluence.Line> lines(MonteCarloProgress s) {
        return s.influence().map(ToleranceInfluence::lines).orElse(List.of()).stream()
            .sorted(Comparator.comparingDouble((ToleranceInfluence.Line l) -> -l.to())
            .thenComparingDouble(l -> -l.sobol().total())).toList();
    }

    @Override
    String words(MonteCarloProgress s) {
        return lines(s).stream().map(l -> NumberFormat.text("%s %.2f %%", l.name(), 100 * l.to()))
            .collect(Collectors.joining(", "));
    }

    @Override
    void draw(Graphics2D g, MonteCarloProgress s, int width, int height) {
        List<ToleranceInfluence.Line> lines = lines(s);
        if (lines.isEmpty()) {
            text(g, "follows once all units are drawn", 0, theme().px(16), theme().faint(), Font.PLAIN);
            return;
        }
        double row = Math.min(theme().px(20), height / (double) lines.size());
        double left = theme().px(96);
        double most = lines.stream().mapToDouble(l -> Math.max(0, l.to() - l.from())).max().orElse(0);
        for (int i = 0; i < lines.size(); i++) {
            ToleranceInfluence.Line l = lines.get(i);
            double base = (i + 0.75) * row;
            double gained = Math.max(0, l.to() - l.from());
            double bar = most > 0 ? gained / most * (width - left - theme().px(60)) : 0;
            text(g, l.name(), 0, base, theme().ink(), i == 0 ? Font.BOLD : Font.PLAIN);
            g.setColor(theme().of(Stack.CANCELLED));
            g.fill(new Rectangle2D.Double(left, base - row * 0.55, Math.max(1, bar), row * 0.6));
            text(g, NumberFormat.text("%.2f %%", 100 * l.to()), left + bar + theme().px(4), base, theme().ink(), Font.PLAIN);
        }
    }
}
