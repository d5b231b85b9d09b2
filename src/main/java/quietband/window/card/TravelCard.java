package quietband.window.card;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.report.file.NumberFormat;
import quietband.response.travel.Travel;
import quietband.window.chart.Theme;
import quietband.window.work.BackgroundFigures;

/** How far the platform travels against its clearance: sustained and, behind it, the larger of shock and random. */
public final class TravelCard extends FigureCard {

    private static final long serialVersionUID = 1;

    public TravelCard(Theme theme) {
        super("Travel against clearance", "Travel", theme);
    }

    @Override
    String words(BackgroundFigures f) {
        return f.assessment().travel().map(t -> NumberFormat.text("counted %.3f, %.3f, %.3f mm", t.counted().x() * 1e3,
            t.counted().y() * 1e3, t.counted().z() * 1e3)).orElse("no platform");
    }

    @Override
    void draw(Graphics2D g, BackgroundFigures f, int width, int height) {
        Optional<Travel> travel = f.assessment().travel();
        if (travel.isEmpty()) {
            text(g, "No platform: bolted down.", 0, theme().px(16), theme().faint(), Font.PLAIN);
            return;
        }
        Travel t = travel.get();
        Optional<Vec> clearance = f.assessment().design().platform().orElseThrow().clearance();
        double most = clearance.map(TravelCard::largest).orElse(0.0);
        most = 1.1 * Math.max(most, largest(t.counted()));
        double row = Math.min(theme().px(46), height / 3.4);
        for (Axis axis : Axis.ALL) {
            axis(g, t, axis, clearance.map(c -> c.get(axis)).orElse(Double.NaN), most, axis.ordinal() * row, row, width);
        }
        text(g, "\u25a0 sustained", 0, height - theme().px(2), theme().faint(), Font.PLAIN);
        text(g, "\u25a0 shock or random", theme().px(84), height - theme().px(2), theme().of(Stack.CANCELLED), Font.PLAIN);
    }

    private void axis(Graphics2D g, Travel t, Axis axis, double clearance, double most, double top, double row, int width) {
        double left = theme().px(14);
        double scale = (width - left - theme().px(4)) / most;
        double thick = Math.max(theme().px(6), row * 0.34);
        double y = top + row - thick - theme().px(4);
        double counted = t.counted().get(axis);
        double sustained = t.sustained().get(axis);
        boolean over = counted > clearance;
        text(g, axis.letter(), 0, y + thick * 0.9, theme().ink(), Font.BOLD);
        g.setColor(theme().of(Stack.CANCELLED));
        g.fill(new Rectangle2D.Double(left, y, counted * scale, thick));
        g.setColor(theme().faint());
        g.fill(new Rectangle2D.Double(left, y, sustained * scale, thick));
        String cause = t.shock().get(axis) >= t.random3Sigma().get(axis) ? "shock" : "random";
        String words = NumberFormat.brief(counted * 1e3, 3) + " mm"
            + (Double.isNaN(clearance) ? "" : " of " + NumberFormat.brief(clearance * 1e3, 3)
            + NumberFormat.text(", %.0f %%", 100 * counted / clearance)) + " (" + cause + ")";
        text(g, words, left, y - theme().px(2), over ? theme().bad() : theme().ink(), over ? Font.BOLD : Font.PLAIN);
        if (!Double.isNaN(clearance)) {
            g.setColor(theme().limit());
            g.setStroke(theme().stroke(quietband.report.chart.ChartStyle.LIMIT));
            g.draw(new Line2D.Double(left + clearance * scale, y - theme().px(1), left + clearance * scale, y + thick + theme().px(1)));
        }
    }

    private static double largest(Vec v) {
        return Math.max(v.x(), Math.max(v.y(), v.z()));
    }
}
