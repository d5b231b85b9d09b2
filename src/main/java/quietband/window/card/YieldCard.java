package quietband.window.card;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import quietband.lot.Proportion;
import quietband.model.Requirement;
import quietband.report.file.NumberFormat;
import quietband.window.chart.Theme;
import quietband.window.work.MonteCarloProgress;

/** The share of units that meet everything, in every condition, with its interval and the share that is asked. */
public final class YieldCard extends MonteCarloCard {

    private static final long serialVersionUID = 1;

    public YieldCard(Theme theme) {
        super("Yield, 95 % interval", "Yield", theme);
    }

    @Override
    String words(MonteCarloProgress s) {
        StringBuilder text = new StringBuilder();
        for (int c = 0; c < s.outcome().conditions().size(); c++) {
            text.append(s.outcome().conditions().get(c)).append(' ').append(share(s.yieldIn(c))).append("; ");
        }
        return text.toString();
    }

    private static String share(Proportion p) {
        return NumberFormat.text("%.2f %% (%.2f to %.2f)", 100 * p.estimate(), 100 * p.low(), 100 * p.high());
    }

    @Override
    void draw(Graphics2D g, MonteCarloProgress s, int width, int height) {
        Optional<Requirement.Yield> asked = s.plan().nominal().requirement().yield();
        int n = s.outcome().conditions().size();
        double row = Math.min(theme().px(46), height / (double) n);
        double least = 1;
        for (int c = 0; c < n; c++) {
            least = Math.min(least, s.yieldIn(c).low());
        }
        double from = Math.floor(20 * Math.min(least, asked.map(Requirement.Yield::share).orElse(1.0))) / 20 - 0.05;
        from = Math.max(0, Math.min(0.9, from));
        for (int c = 0; c < n; c++) {
            row(g, s.outcome().conditions().get(c), s.yieldIn(c), asked, from, c * row, row, width);
        }
    }

    private void row(Graphics2D g, String name, Proportion p, Optional<Requirement.Yield> asked, double from, double top, double row,
                     int width) {
        boolean good = asked.isEmpty() || p.estimate() >= asked.get().share();
        double thick = Math.max(theme().px(5), row * 0.28);
        double y = top + row - thick - theme().px(4);
        double scale = (width - theme().px(2)) / (1 - from);
        text(g, name.equals("nominal") ? "as written" : name, 0, y - theme().px(2), theme().ink(), Font.PLAIN);
        textLeftOf(g, share(p), width, y - theme().px(2), good ? theme().good() : theme().bad(), Font.BOLD);
        g.setColor(theme().grid());
        g.fill(new Rectangle2D.Double(0, y, width - theme().px(2), thick));
        g.setColor(good ? theme().goodArea() : theme().badArea());
        g.fill(new Rectangle2D.Double(0, y, Math.max(0, (p.estimate() - from) * scale), thick));
        g.setColor(theme().ink());
        g.setStroke(new BasicStroke(theme().px(2)));
        g.draw(new Line2D.Double((p.low() - from) * scale, y + thick / 2, (p.high() - from) * scale, y + thick / 2));
        if (asked.isPresent()) {
            g.setColor(theme().limit());
            double x = (asked.get().share() - from) * scale;
            g.draw(new Line2D.Double(x, y - theme().px(1), x, y + thick + theme().px(1)));
        }
    }
}
