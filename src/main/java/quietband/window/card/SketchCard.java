package quietband.window.card;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.window.chart.Theme;
import quietband.window.work.BackgroundFigures;

/** The platform from above and from the side, to scale: springs, centre of gravity, resonator and sensor. */
public final class SketchCard extends FigureCard {

    private static final long serialVersionUID = 1;

    public SketchCard(Theme theme) {
        super("Sketch, to scale", "Sketch", theme);
    }

    @Override
    String words(BackgroundFigures f) {
        return f.assessment().design().platform().map(p -> p.springs().size() + " springs").orElse("no platform");
    }

    @Override
    void draw(Graphics2D g, BackgroundFigures f, int width, int height) {
        Design d = f.assessment().design();
        if (d.platform().isEmpty()) {
            text(g, "No platform: bolted down.", 0, theme().px(16), theme().faint(), Font.PLAIN);
            return;
        }
        int foot = theme().px(34);
        double half = extent(d);
        double scale = Math.min((width / 2.0 - theme().px(10)) / (2 * half), (height - foot - theme().px(14)) / (2 * half));
        double middle = theme().px(14) + (height - foot - theme().px(14)) / 2.0;
        view(g, d, width * 0.25, middle, scale, false);
        view(g, d, width * 0.75, middle, scale, true);
        textLeftOf(g, "x, y", width * 0.25 + theme().px(12), theme().px(10), theme().faint(), Font.PLAIN);
        textLeftOf(g, "x, z", width * 0.75 + theme().px(12), theme().px(10), theme().faint(), Font.PLAIN);
        double y = height - theme().px(18);
        legend(g, "\u25a0 spring", 0, y, theme().of(Stack.ISOLATED));
        legend(g, "+ centre of gravity", width * 0.42, y, theme().ink());
        legend(g, "\u25c6 resonator", 0, y + theme().px(15), theme().good());
        legend(g, "\u25cf sensor", width * 0.42, y + theme().px(15), theme().of(Stack.CANCELLED));
    }

    private void legend(Graphics2D g, String words, double x, double y, Color colour) {
        text(g, words, x, y, colour, Font.PLAIN);
    }

    private static double extent(Design d) {
        Platform p = d.platform().orElseThrow();
        List<Vec> points = new ArrayList<>();
        p.springs().forEach(s -> points.add(s.at()));
        p.size().ifPresent(s -> {
            points.add(p.centreOfGravity().plus(new Vec(s.x() / 2, s.y() / 2, s.z() / 2)));
            points.add(p.centreOfGravity().plus(new Vec(-s.x() / 2, -s.y() / 2, -s.z() / 2)));
        });
        points.add(d.oscillator().resonator().position());
        d.cancellation().ifPresent(c -> points.add(c.sensor().position()));
        return points.stream().mapToDouble(v -> Math.max(Math.abs(v.x()), Math.max(Math.abs(v.y()), Math.abs(v.z())))).max()
            .orElse(0.01) * 1.08 + 1e-6;
    }

    /** @param side from the side (z up) instead of from above (y up) */
    private void view(Graphics2D g, Design d, double cx, double cy, double scale, boolean side) {
        Platform p = d.platform().orElseThrow();
        p.size().ifPresent(s -> {
            double up = side ? s.z() : s.y();
            double[] c = at(p.centreOfGravity(), cx, cy, scale, side);
            Rectangle2D plate = new Rectangle2D.Double(c[0] - s.x() / 2 * scale, c[1] - up / 2 * scale, s.x() * scale, up * scale);
            g.setColor(theme().grid());
            g.fill(plate);
            g.setColor(theme().faint());
            g.setStroke(new BasicStroke(theme().px(1)));
            g.draw(plate);
        });
        double r = theme().px(4);
        g.setColor(theme().of(Stack.ISOLATED));
        p.springs().forEach(s -> {
            double[] c = at(s.at(), cx, cy, scale, side);
            g.fill(new Rectangle2D.Double(c[0] - r, c[1] - r, 2 * r, 2 * r));
        });
        double[] c = at(d.oscillator().resonator().position(), cx, cy, scale, side);
        g.setColor(theme().good());
        Path2D diamond = new Path2D.Double();
        diamond.moveTo(c[0], c[1] - 1.4 * r);
        diamond.lineTo(c[0] + 1.4 * r, c[1]);
        diamond.lineTo(c[0], c[1] + 1.4 * r);
        diamond.lineTo(c[0] - 1.4 * r, c[1]);
        diamond.closePath();
        g.fill(diamond);
        d.cancellation().filter(k -> k.sensor().onPlatform()).ifPresent(k -> {
            double[] q = at(k.sensor().position(), cx, cy, scale, side);
            g.setColor(theme().of(Stack.CANCELLED));
            g.fill(new Ellipse2D.Double(q[0] - r, q[1] - r, 2 * r, 2 * r));
        });
        double[] m = at(p.centreOfGravity(), cx, cy, scale, side);
        g.setColor(theme().ink());
        g.setStroke(new BasicStroke(theme().px(2)));
        g.draw(new java.awt.geom.Line2D.Double(m[0] - 1.5 * r, m[1], m[0] + 1.5 * r, m[1]));
        g.draw(new java.awt.geom.Line2D.Double(m[0], m[1] - 1.5 * r, m[0], m[1] + 1.5 * r));
    }

    private static double[] at(Vec p, double cx, double cy, double scale, boolean side) {
        return new double[] {cx + p.x() * scale, cy - (side ? p.z() : p.y()) * scale};
    }
}
