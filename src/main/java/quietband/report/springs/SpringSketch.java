package quietband.report.springs;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Platform.Spring;
import quietband.model.Vec;
import quietband.platform.BodyExtent;
import quietband.report.chart.ChartStyle;
import quietband.report.file.NumberFormat;
import quietband.report.svg.Svg;
import quietband.tuning.springs.SpringAnswer;

/** A dimensioned sketch to scale: from above (x right, y up) and from the side (x right, z up). */
final class SpringSketch {

    private static final int WIDTH = 760;
    private static final int HEIGHT = 420;
    private static final int VIEW = 300;
    private static final int TOP = 40;

    private final SpringAnswer answer;
    private final Design design;
    private final Platform platform;
    private final double scale;
    private final Vec middle;

    private SpringSketch(SpringAnswer answer) {
        this.answer = answer;
        this.design = answer.changed().design();
        this.platform = design.platform().orElseThrow();
        double most = 0;
        double[] low = {1e9, 1e9, 1e9};
        double[] high = {-1e9, -1e9, -1e9};
        for (Vec p : BodyExtent.points(platform)) {
            for (int i = 0; i < 3; i++) {
                low[i] = Math.min(low[i], p.get(i));
                high[i] = Math.max(high[i], p.get(i));
            }
        }
        for (int i = 0; i < 3; i++) {
            most = Math.max(most, high[i] - low[i]);
            most = Math.max(most, Double.isFinite(platform.boxLimit().get(i)) ? platform.boxLimit().get(i) : 0);
        }
        middle = new Vec((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2);
        scale = 250 / Math.max(most, 1e-3);
    }

    static String svg(SpringAnswer answer) {
        return Svg.draw("sketch",
            "Sketch from above and from the side: body, springs, centre of gravity, elastic centre, resonator, sensors",
            WIDTH, HEIGHT, g -> new SpringSketch(answer).draw(g));
    }

    private void draw(Graphics2D g) {
        g.setFont(ChartStyle.FONT);
        view(g, 40, Axis.Y, "from above: x right, y up");
        view(g, 420, Axis.Z, "from the side: x right, z up");
        legend(g);
    }

    private void view(Graphics2D g, int left, Axis up, String caption) {
        g.setColor(ChartStyle.INK);
        g.drawString(caption, left, TOP - 18);
        double cx = left + VIEW / 2.0;
        double cy = TOP + VIEW / 2.0;
        if (Double.isFinite(platform.boxLimit().x()) && Double.isFinite(platform.boxLimit().get(up))) {
            frame(g, cx, cy, platform.boxLimit().x(), platform.boxLimit().get(up), ChartStyle.LIMIT.colour(), true);
            dimension(g, cx, cy + platform.boxLimit().get(up) * scale / 2 + 18, platform.boxLimit().x(), "box ");
            upright(g, cx + platform.boxLimit().x() * scale / 2 + 18, cy, platform.boxLimit().get(up), "box ");
        }
        platform.size().ifPresent(size -> {
            Vec c = platform.centreOfGravity();
            frame(g, cx + (c.x() - middle.x()) * scale, cy - (c.get(up) - middle.get(up)) * scale, size.x(),
                size.get(up), ChartStyle.FAINT, false);
        });
        spans(g, cx, cy, up);
        bodySize(g, cx, cy, up);
        for (Spring s : platform.springs()) {
            spring(g, cx + (s.at().x() - middle.x()) * scale, cy - (s.at().get(up) - middle.get(up)) * scale,
                up == Axis.Z);
        }
        Vec cog = platform.centreOfGravity();
        cross(g, cx, cy, cog, up);
        ring(g, cx, cy, cog.plus(answer.elastic().offset()), up);
        square(g, cx, cy, design.oscillator().resonator().position(), up, ChartStyle.SPRINGS.colour());
        design.cancellation().filter(c -> c.sensor().onPlatform()).ifPresent(c -> diamond(g, cx, cy, c.sensor()
            .position(), up));
    }

    private void frame(Graphics2D g, double cx, double cy, double w, double h, Color colour, boolean dashed) {
        g.setColor(colour);
        g.setStroke(dashed ? new BasicStroke(1.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 1, new float[] {8, 4},
            0)
            : new BasicStroke(1.4f));
        g.draw(new Rectangle2D.Double(cx - w * scale / 2, cy - h * scale / 2, w * scale, h * scale));
    }

    /** Distances between the outermost springs. */
    private void spans(Graphics2D g, double cx, double cy, Axis up) {
        double[] x = platform.springs().stream().mapToDouble(s -> s.at().x()).sorted().toArray();
        double[] v = platform.springs().stream().mapToDouble(s -> s.at().get(up)).sorted().toArray();
        double span = x[x.length - 1] - x[0];
        double at = cx + ((x[0] + x[x.length - 1]) / 2 - middle.x()) * scale;
        if (span > 0) {
            dimension(g, at, cy - (v[v.length - 1] - middle.get(up)) * scale + 24, span, "");
        }
        double high = v[v.length - 1] - v[0];
        if (high > 0) {
            upright(g, cx + (x[0] - middle.x()) * scale + 22, cy - ((v[0] + v[v.length - 1]) / 2 - middle.get(up)) * scale, high, "");
        }
    }

    /** Length and height of the body, below and left of it. */
    private void bodySize(Graphics2D g, double cx, double cy, Axis up) {
        platform.size().ifPresent(size -> {
            Vec c = platform.centreOfGravity();
            double bx = cx + (c.x() - middle.x()) * scale;
            double by = cy - (c.get(up) - middle.get(up)) * scale;
            dimension(g, bx, by + size.get(up) * scale / 2 + 13, size.x(), "body ");
            upright(g, bx - size.x() * scale / 2 - 13, by, size.get(up), up == Axis.Z ? "" : "body ");
        });
    }

    private void upright(Graphics2D g, double px, double py, double length, String what) {
        g.setColor(ChartStyle.FAINT);
        g.setStroke(new BasicStroke(0.8f));
        g.draw(new Line2D.Double(px, py - length * scale / 2, px, py + length * scale / 2));
        for (int side = -1; side <= 1; side += 2) {
            g.draw(new Line2D.Double(px - 4, py + side * length * scale / 2, px + 4, py + side * length * scale / 2));
        }
        java.awt.geom.AffineTransform before = g.getTransform();
        g.translate(px, py);
        g.rotate(-Math.PI / 2);
        label(g, what + text(length), 0, 0);
        g.setTransform(before);
    }

    /** Words in the middle of a line, which is broken there. */
    private static void label(Graphics2D g, String words, double x, double y) {
        java.awt.FontMetrics m = g.getFontMetrics();
        double w = m.stringWidth(words);
        g.setColor(Color.WHITE);
        g.fill(new Rectangle2D.Double(x - w / 2 - 3, y - 8, w + 6, 16));
        g.setColor(ChartStyle.INK);
        g.drawString(words, (float) (x - w / 2), (float) y + 4);
    }

    private void dimension(Graphics2D g, double cx, double y, double length, String what) {
        g.setColor(ChartStyle.FAINT);
        g.setStroke(new BasicStroke(0.8f));
        g.draw(new Line2D.Double(cx - length * scale / 2, y, cx + length * scale / 2, y));
        for (int side = -1; side <= 1; side += 2) {
            g.draw(new Line2D.Double(cx + side * length * scale / 2, y - 4, cx + side * length * scale / 2, y + 4));
        }
        label(g, what + text(length), cx, y);
    }

    private static String text(double m) {
        return NumberFormat.text("%.2f mm", 1e3 * m);
    }

    private static void spring(Graphics2D g, double x, double y, boolean side) {
        g.setColor(ChartStyle.CORRECTION.colour());
        g.setStroke(new BasicStroke(1.6f));
        if (!side) {
            g.draw(new Ellipse2D.Double(x - 8, y - 8, 16, 16));
            g.draw(new Ellipse2D.Double(x - 5, y - 5, 10, 10));
            return;
        }
        Path2D zigzag = new Path2D.Double();
        zigzag.moveTo(x, y - 14);
        for (int i = 0; i < 7; i++) {
            zigzag.lineTo(x + (i % 2 == 0 ? 7 : -7), y - 12 + 4 * i);
        }
        zigzag.lineTo(x, y + 14);
        g.draw(zigzag);
    }

    private double px(double cx, Vec p) {
        return cx + (p.x() - middle.x()) * scale;
    }

    private double py(double cy, Vec p, Axis up) {
        return cy - (p.get(up) - middle.get(up)) * scale;
    }

    private void cross(Graphics2D g, double cx, double cy, Vec p, Axis up) {
        crossAt(g, px(cx, p), py(cy, p, up));
    }

    private static void crossAt(Graphics2D g, double x, double y) {
        g.setColor(ChartStyle.INK);
        g.setStroke(new BasicStroke(1.6f));
        g.draw(new Line2D.Double(x - 7, y, x + 7, y));
        g.draw(new Line2D.Double(x, y - 7, x, y + 7));
    }

    private void ring(Graphics2D g, double cx, double cy, Vec p, Axis up) {
        ringAt(g, px(cx, p), py(cy, p, up));
    }

    private static void ringAt(Graphics2D g, double x, double y) {
        g.setColor(ChartStyle.LIMIT.colour());
        g.setStroke(new BasicStroke(1.4f));
        g.draw(new Ellipse2D.Double(x - 5, y - 5, 10, 10));
    }

    private void square(Graphics2D g, double cx, double cy, Vec p, Axis up, Color colour) {
        g.setColor(colour);
        g.fill(new Rectangle2D.Double(px(cx, p) - 4, py(cy, p, up) - 4, 8, 8));
    }

    private void diamond(Graphics2D g, double cx, double cy, Vec p, Axis up) {
        diamondAt(g, px(cx, p), py(cy, p, up));
    }

    private static void diamondAt(Graphics2D g, double x, double y) {
        Path2D d = new Path2D.Double();
        d.moveTo(x, y - 6);
        d.lineTo(x + 6, y);
        d.lineTo(x, y + 6);
        d.lineTo(x - 6, y);
        d.closePath();
        g.setColor(new Color(0x00785A));
        g.setStroke(new BasicStroke(1.6f));
        g.draw(d);
    }

    private void legend(Graphics2D g) {
        double y = TOP + VIEW + 44;
        spring(g, 56, y, false);
        crossAt(g, 150, y);
        ringAt(g, 290, y);
        g.setColor(ChartStyle.SPRINGS.colour());
        g.fill(new Rectangle2D.Double(424, y - 4, 8, 8));
        boolean sensors = design.cancellation().filter(c -> c.sensor().onPlatform()).isPresent();
        if (sensors) {
            diamondAt(g, 530, y);
        }
        List<String> words = List.of("spring", "centre of gravity", "elastic centre", "resonator", "sensors");
        int[] at = {72, 164, 302, 440, 544};
        g.setColor(ChartStyle.INK);
        for (int i = 0; i < at.length; i++) {
            if (i < 4 || sensors) {
                g.drawString(words.get(i), at[i], (float) y + 4);
            }
        }
        g.drawString(NumberFormat.text("1 cm = %.0f px; full line: body; dashed red: largest box", 0.01 * scale), 40,
            (float) y + 26);
    }
}
