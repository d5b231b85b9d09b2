package quietband.report.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import quietband.report.file.NumberFormat;
import quietband.report.svg.Picture;
import quietband.report.svg.Svg;

/**
 * A quantity over two others, as one image with a line where it meets a limit.
 *
 * @param name  of the file without its ending; letters, digits and hyphens
 * @param title what it shows, with its unit
 * @param x     horizontal axis
 * @param y     vertical axis
 * @param z     value at node i of x and j of y: {@code z[j][i]}; NaN where there is none
 * @param limit where the line goes; NaN for none
 * @param mark  a point of interest, {x, y}; empty for none
 */
public record HeatMap(String name, String title, Scale x, Scale y, double[][] z, double limit, double[] mark) implements Picture {

    private static final int WIDTH = 760;
    private static final int HEIGHT = 420;
    private static final int LEFT = 92;
    private static final int TOP = 34;
    private static final int WIDE = 500;
    private static final int HIGH = 316;
    private static final int BAR = LEFT + WIDE + 34;
    // dark to light, so that a grey print tells them apart too
    private static final int[] RAMP = {0x1B1240, 0x3B3F8C, 0x2A86A8, 0x3FB58A, 0xB5D56A, 0xFFF3B0};

    /**
     * An even scale.
     *
     * @param label with unit
     * @param from  first node
     * @param to    last node
     */
    public record Scale(String label, double from, double to) {

        double share(double value) {
            return (value - from) / (to - from);
        }
    }

    @Override
    public String svg() {
        double[] ends = ends();
        return Svg.draw(name, title, WIDTH, HEIGHT, g -> draw(g, ends[0], ends[1]));
    }

    private double[] ends() {
        DoubleSummaryStatistics finite = Arrays.stream(z).flatMapToDouble(Arrays::stream).filter(Double::isFinite).summaryStatistics();
        double low = finite.getMin();
        double high = finite.getMax();
        if (!(high > low)) {
            double middle = Double.isFinite(low) ? low : 0;
            return new double[] {middle - 0.5, middle + 0.5};
        }
        return new double[] {low, high};
    }

    private void draw(Graphics2D g, double low, double high) {
        g.drawImage(image(low, high), LEFT, TOP, null);
        g.drawImage(colours(), BAR, TOP, null);
        g.setFont(ChartStyle.FONT);
        g.setColor(ChartStyle.INK);
        g.drawString(title, LEFT, TOP - 12);
        contour(g);
        marked(g);
        g.setColor(ChartStyle.FAINT);
        g.setStroke(new BasicStroke(1));
        g.draw(new Rectangle2D.Double(LEFT, TOP, WIDE, HIGH));
        across(g);
        upwards(g);
        bar(g, low, high);
    }

    private BufferedImage image(double low, double high) {
        BufferedImage image = new BufferedImage(WIDE, HIGH, BufferedImage.TYPE_INT_RGB);
        for (int py = 0; py < HIGH; py++) {
            for (int px = 0; px < WIDE; px++) {
                double v = between((px + 0.5) / WIDE, 1 - (py + 0.5) / HIGH);
                image.setRGB(px, py, Double.isFinite(v) ? colour((v - low) / (high - low)).getRGB() : 0xE6E6E6);
            }
        }
        return image;
    }

    /** Straight between the four nodes around. */
    private double between(double sx, double sy) {
        double i = sx * (z[0].length - 1);
        double j = sy * (z.length - 1);
        int i0 = (int) Math.min(Math.floor(i), z[0].length - 2.0);
        int j0 = (int) Math.min(Math.floor(j), z.length - 2.0);
        double u = i - i0;
        double v = j - j0;
        return (z[j0][i0] * (1 - u) + z[j0][i0 + 1] * u) * (1 - v) + (z[j0 + 1][i0] * (1 - u) + z[j0 + 1][i0
            + 1] * u) * v;
    }

    private static Color colour(double share) {
        double s = Math.max(0, Math.min(1, share)) * (RAMP.length - 1);
        int k = (int) Math.min(Math.floor(s), RAMP.length - 2.0);
        double t = s - k;
        int a = RAMP[k];
        int b = RAMP[k + 1];
        return new Color(mix(a >> 16, b >> 16, t), mix(a >> 8, b >> 8, t), mix(a, b, t));
    }

    private static int mix(int a, int b, double t) {
        return (int) Math.round((a & 255) * (1 - t) + (b & 255) * t);
    }

    /** Marching over the triangles of every cell, which leaves no case open. */
    private void contour(Graphics2D g) {
        if (Double.isNaN(limit)) {
            return;
        }
        int ny = z.length;
        int nx = z[0].length;
        for (int pass = 0; pass < 2; pass++) {
            g.setColor(pass == 0 ? ChartStyle.PAPER : ChartStyle.LIMIT.colour());
            g.setStroke(new BasicStroke(pass == 0 ? 5f : 2.4f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
            for (int j = 0; j + 1 < ny; j++) {
                for (int i = 0; i + 1 < nx; i++) {
                    triangle(g, i, j, i + 1, j, i + 1, j + 1);
                    triangle(g, i, j, i + 1, j + 1, i, j + 1);
                }
            }
        }
    }

    private void triangle(Graphics2D g, int... at) {
        double[] ends = new double[4];
        int found = 0;
        for (int e = 0; e < 3 && found < 4; e++) {
            int a = 2 * e;
            int b = 2 * ((e + 1) % 3);
            double va = z[at[a + 1]][at[a]] - limit;
            double vb = z[at[b + 1]][at[b]] - limit;
            if (va < 0 != vb < 0 && Double.isFinite(va) && Double.isFinite(vb)) {
                double t = va / (va - vb);
                ends[found++] = LEFT + WIDE * (at[a] + t * (at[b] - at[a])) / (z[0].length - 1.0);
                ends[found++] = TOP + HIGH * (1 - (at[a + 1] + t * (at[b + 1] - at[a + 1])) / (z.length - 1.0));
            }
        }
        if (found == 4) {
            g.draw(new Line2D.Double(ends[0], ends[1], ends[2], ends[3]));
        }
    }

    private void marked(Graphics2D g) {
        if (mark.length < 2) {
            return;
        }
        double px = LEFT + WIDE * x.share(mark[0]);
        double py = TOP + HIGH * (1 - y.share(mark[1]));
        if (px >= LEFT && px <= LEFT + WIDE && py >= TOP && py <= TOP + HIGH) {
            g.setColor(ChartStyle.PAPER);
            g.fill(new Ellipse2D.Double(px - 6, py - 6, 12, 12));
            g.setColor(ChartStyle.INK);
            g.setStroke(new BasicStroke(2));
            g.draw(new Ellipse2D.Double(px - 6, py - 6, 12, 12));
        }
    }

    private void across(Graphics2D g) {
        g.setColor(ChartStyle.INK);
        for (int k = 0; k <= 4; k++) {
            double v = x.from() + (x.to() - x.from()) * k / 4;
            double px = LEFT + WIDE * k / 4.0;
            g.draw(new Line2D.Double(px, TOP + HIGH, px, TOP + HIGH + 5));
            String text = NumberFormat.brief(v, 4);
            g.drawString(text, (float) (px - 3.2 * text.length()), TOP + HIGH + 20);
        }
        g.drawString(x.label(), (float) (LEFT + WIDE / 2.0 - 3.2 * x.label().length()), TOP + HIGH + 40);
    }

    private void upwards(Graphics2D g) {
        g.setColor(ChartStyle.INK);
        for (int k = 0; k <= 4; k++) {
            double v = y.from() + (y.to() - y.from()) * k / 4;
            double py = TOP + HIGH * (1 - k / 4.0);
            g.draw(new Line2D.Double(LEFT - 5, py, LEFT, py));
            String text = NumberFormat.brief(v, 4);
            g.drawString(text, (float) (LEFT - 10 - 6.8 * text.length()), (float) py + 4);
        }
        java.awt.geom.AffineTransform before = g.getTransform();
        g.translate(16, TOP + HIGH / 2.0 + 3.2 * y.label().length());
        g.rotate(-Math.PI / 2);
        g.drawString(y.label(), 0, 0);
        g.setTransform(before);
    }

    private static BufferedImage colours() {
        BufferedImage image = new BufferedImage(18, HIGH, BufferedImage.TYPE_INT_RGB);
        for (int py = 0; py < HIGH; py++) {
            for (int px = 0; px < 18; px++) {
                image.setRGB(px, py, colour(1 - (py + 0.5) / HIGH).getRGB());
            }
        }
        return image;
    }

    private void bar(Graphics2D g, double low, double high) {
        g.setColor(ChartStyle.INK);
        g.setStroke(new BasicStroke(1));
        for (int k = 0; k <= 4; k++) {
            double py = TOP + HIGH * (1 - k / 4.0);
            g.drawString(NumberFormat.brief(low + (high - low) * k / 4, 3), BAR + 26, (float) py + 4);
        }
        if (limit > low && limit < high) {
            double py = TOP + HIGH * (1 - (limit - low) / (high - low));
            g.setColor(ChartStyle.LIMIT.colour());
            g.setStroke(new BasicStroke(2.4f));
            g.draw(new Line2D.Double(BAR - 4, py, BAR + 22, py));
            g.drawString(NumberFormat.text("limit %s", NumberFormat.brief(limit, 3)), BAR + 76, (float) py + 4);
        }
    }
}
