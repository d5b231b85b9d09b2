package quietband.report.lot;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import quietband.lot.SortRule;
import quietband.lot.SortedLot;
import quietband.report.chart.ChartStyle;
import quietband.report.file.NumberFormat;
import quietband.report.svg.Svg;

/** How many units have which sensitivity, with the fitted distribution and the limit. */
final class LotBars {

    private static final int WIDTH = 760;
    private static final int LEFT = 52;
    private static final int RIGHT = 20;
    private static final int TOP = 28;
    private static final int BASE = 250;

    private LotBars() { }

    /** The picture. */
    static String lengths(SortedLot s) {
        double[] v = s.rising();
        double top = Math.max(1.2 * s.rule().limitPpbPerG(), 1.05 * v[(int) (0.999 * (v.length - 1))]);
        double step = step(top, v.length);
        int bars = (int) Math.ceil(top / step);
        long[] count = new long[bars];
        for (double x : v) {
            int k = (int) (x / step);
            if (k < bars) {
                count[k]++;
            }
        }
        double high = 1.08 * Math.max(1, Arrays.stream(count).max().orElse(1));
        return Svg.draw("lengths", "Units by sensitivity", WIDTH, 300, g -> {
            double scale = (WIDTH - LEFT - RIGHT) / (bars * step);
            for (int k = 0; k < bars; k++) {
                double tall = (BASE - TOP) * count[k] / high;
                g.setColor((k + 0.5) * step <= s.rule().limitPpbPerG() ? ChartStyle.CORRECTION.colour() : ChartStyle.GRID);
                g.fill(new Rectangle2D.Double(LEFT + k * step * scale + 0.5, BASE - tall, step * scale - 1, tall));
            }
            law(g, s, step, bars, scale, high);
            frame(g, s, step * bars, scale, high);
        });
    }

    private static double step(double top, int units) {
        double wanted = top / Math.max(8, Math.min(40, Math.sqrt(units)));
        double decade = StrictMath.pow(10, Math.floor(StrictMath.log10(wanted)));
        return wanted <= 2 * decade ? 2 * decade : wanted <= 5 * decade ? 5 * decade : 10 * decade;
    }

    private static void law(Graphics2D g, SortedLot s, double step, int bars, double scale, double high) {
        if (s.fitted().isEmpty()) {
            return;
        }
        Path2D path = new Path2D.Double();
        double before = 0;
        int fine = Math.min(200, 4 * bars);
        double wide = step * bars / fine;
        for (int k = 0; k < fine; k++) {
            double now = s.fittedShare((k + 1) * wide);
            double y = BASE - (BASE - TOP) * Math.min(1.02, (now - before) * s.value().length * step / wide / high);
            double x = LEFT + (k + 0.5) * wide * scale;
            if (k == 0) {
                path.moveTo(x, y);
            } else {
                path.lineTo(x, y);
            }
            before = now;
        }
        g.setColor(ChartStyle.INK);
        g.setStroke(new BasicStroke(1.6f));
        g.draw(path);
    }

    private static void frame(Graphics2D g, SortedLot s, double top, double scale, double high) {
        g.setFont(ChartStyle.FONT);
        g.setColor(ChartStyle.INK);
        g.setStroke(new BasicStroke(1.2f));
        g.draw(new Line2D.Double(LEFT, BASE, WIDTH - RIGHT, BASE));
        double tick = step(top, 64);
        for (int k = 0; k * tick <= top * 1.0001; k++) {
            String text = NumberFormat.brief(k * tick, 3);
            float x = (float) (LEFT + k * tick * scale);
            g.draw(new Line2D.Double(x, BASE, x, BASE + 4));
            g.drawString(text, x - g.getFontMetrics().stringWidth(text) / 2f, BASE + 18);
        }
        double unit = Math.max(1, step(high, 16));
        for (double n = unit; n <= high; n += unit) {
            String text = NumberFormat.brief(n, 4);
            float y = (float) (BASE - (BASE - TOP) * n / high);
            g.drawString(text, LEFT - 6 - g.getFontMetrics().stringWidth(text), y + 4);
            g.draw(new Line2D.Double(LEFT - 4, y, LEFT, y));
        }
        String what = s.rule().by() == SortRule.By.VECTOR ? "length of the vector, ppb/g" : "worst axis, ppb/g";
        g.drawString(what, WIDTH / 2f - g.getFontMetrics().stringWidth(what) / 2f, BASE + 38);
        g.drawString("units; line: the fitted distribution", LEFT, 14);
        g.setColor(ChartStyle.LIMIT.colour());
        g.setStroke(ChartStyle.LIMIT.stroke());
        double x = LEFT + s.rule().limitPpbPerG() * scale;
        g.draw(new Line2D.Double(x, TOP - 6, x, BASE));
        g.drawString("limit", (float) x + 5, TOP + 4);
    }
}
