package quietband.report.tolerance;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import quietband.report.chart.ChartStyle;
import quietband.report.file.NumberFormat;
import quietband.report.svg.Svg;
import quietband.tolerance.campaign.MarginCounts;
import quietband.tolerance.influence.ToleranceInfluence;

/** Bars of a Monte Carlo: margins of the units, influence of the tolerances. */
final class ToleranceBars {

    private static final int WIDTH = 760;
    private static final int LEFT = 170;

    private ToleranceBars() { }

    /** How many units have which margin; the limit is the line at 0 dB. */
    static String margins(MarginCounts margins) {
        return Svg.draw("margins", "Margins of the units", WIDTH, 260, g -> {
            double from = Math.min(0, margins.quantile(0.0005));
            double to = Math.max(0, margins.quantile(0.9995));
            double step = Math.max(MarginCounts.STEP_DB, Math.rint((to - from) / 60 / MarginCounts.STEP_DB) * MarginCounts.STEP_DB);
            int first = (int) Math.floor(from / step) - 1;
            int bars = (int) Math.ceil(to / step) + 1 - first;
            long most = 1;
            for (int i = 0; i < bars; i++) {
                most = Math.max(most, margins.between((first + i) * step, (first + i + 1) * step));
            }
            double wide = (WIDTH - 60.0) / bars;
            for (int i = 0; i < bars; i++) {
                double high = 200.0 * margins.between((first + i) * step, (first + i + 1) * step) / most;
                g.setColor(first + i < 0 ? ChartStyle.LIMIT.colour() : ChartStyle.CORRECTION.colour());
                g.fill(new Rectangle2D.Double(30 + i * wide, 220 - high, wide * 0.9, high));
            }
            axis(g, first * step, (first + bars) * step);
        });
    }

    private static void axis(Graphics2D g, double from, double to) {
        g.setFont(ChartStyle.FONT);
        g.setColor(ChartStyle.INK);
        double scale = (WIDTH - 60) / (to - from);
        double zero = 30 - from * scale;
        g.setStroke(new BasicStroke(1.2f));
        g.draw(new Line2D.Double(30, 220, WIDTH - 30, 220));
        g.draw(new Line2D.Double(zero, 10, zero, 224));
        double tick = to - from > 8 ? 2 : to - from > 3 ? 1 : 0.5;
        for (double v = Math.ceil(from / tick) * tick; v <= to; v += tick) {
            g.drawString(NumberFormat.text("%.1f", v), (float) (22 + (v - from) * scale), 238);
        }
        g.drawString("margin, dB (below 0: fails)", 300, 256);
    }

    /** Total and first-order index of each tolerance. */
    static String influence(ToleranceInfluence influence) {
        List<ToleranceInfluence.Line> lines = ToleranceText.ordered(influence);
        int height = 40 + 34 * lines.size();
        return Svg.draw("influence", "Influence of the tolerances", WIDTH, height, g -> {
            g.setFont(ChartStyle.FONT);
            double scale = WIDTH - LEFT - 80.0;
            for (int i = 0; i < lines.size(); i++) {
                double y = 26 + 34.0 * i;
                g.setColor(ChartStyle.CORRECTION.colour());
                g.fill(new Rectangle2D.Double(LEFT, y, scale * bounded(lines.get(i).sobol().total()), 12));
                g.setColor(ChartStyle.SPRINGS.colour());
                g.fill(new Rectangle2D.Double(LEFT, y + 13, scale * bounded(lines.get(i).sobol().first()), 8));
                g.setColor(ChartStyle.INK);
                String name = lines.get(i).name();
                g.drawString(name.length() > 24 ? name.substring(0, 23) + "." : name, 6, (float) y + 14);
                g.drawString(NumberFormat.text("%.3f", lines.get(i).sobol().total()),
                    (float) (LEFT + 6 + scale * bounded(lines.get(i).sobol().total())), (float) y + 11);
            }
            g.drawString("share of the margin's variance: upper bar total, lower bar first order", LEFT, 14);
        });
    }

    private static double bounded(double share) {
        return Math.max(0, Math.min(1, share));
    }
}
