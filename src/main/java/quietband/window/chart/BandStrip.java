package quietband.window.chart;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.Optional;
import javax.swing.JPanel;
import quietband.model.Stack;
import quietband.report.chart.ChartStyle;
import quietband.report.file.QuantityText;
import quietband.response.ResidualCurves;
import quietband.response.verdict.StackVerdict;
import quietband.window.work.BackgroundFigures;
import quietband.window.work.DesignView;

/**
 * The band at a glance, a row a stack: above its middle where the stack is within the limit, below where it is over, full height at
 * 20 dB; on the left its name, the sample of its line in the chart underneath, and its worst point.
 */
public final class BandStrip extends JPanel {

    private static final long serialVersionUID = 1;
    private static final double FULL_DB = 20;
    private static final int ROW = 30;
    private static final int LOW_ROW = 17;

    private final transient BufferedPicture drawn = new BufferedPicture();
    private transient Theme theme;
    private transient DesignView view;
    private transient BackgroundFigures figures;
    private boolean low;

    public BandStrip(Theme theme) {
        this.theme = theme;
        setName("strip");
        setFocusable(false);
        setOpaque(false);
    }

    public void theme(Theme changed) {
        theme = changed;
        revalidate();
        redraw();
    }

    public void show(DesignView next) {
        boolean other = view == null || view.curves().stacks().size() != next.curves().stacks().size();
        view = next;
        if (other) {
            revalidate();
        }
        redraw();
    }

    private void redraw() {
        drawn.outdated();
        repaint();
    }

    public void show(BackgroundFigures next) {
        boolean same = figures != null && figures.assessment().equals(next.assessment());
        figures = next;
        if (!same) {
            describe();
            redraw();
        }
    }

    private void describe() {
        StringBuilder words = new StringBuilder();
        figures.assessment().verdicts().forEach(v -> words.append(v.stack().key()).append(": ").append(worst(v)).append(". "));
        getAccessibleContext().setAccessibleDescription(words.toString());
    }

    @Override
    public Dimension getPreferredSize() {
        int rows = view == null ? 4 : view.curves().stacks().size();
        return new Dimension(theme.px(300), theme.px(rowHeight()) * rows + theme.px(4));
    }

    /** Whether there is little height. */
    public void low(boolean little) {
        low = little;
        drawn.outdated();
        revalidate();
    }

    private int rowHeight() {
        return low ? LOW_ROW : ROW;
    }

    @Override
    protected void paintComponent(Graphics g) {
        drawn.paint(g, this, g2 -> draw(g2, getWidth(), getHeight()));
    }

    /** Draws it, for the window and for a file. */
    public void draw(Graphics2D g, int width, int height) {
        if (view == null) {
            return;
        }
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        ResidualCurves c = view.curves();
        int rows = c.stacks().size();
        double row = (height - theme.px(4)) / (double) rows;
        BandLayout gutter = BandLayout.of(theme, width);
        for (int s = 0; s < rows; s++) {
            name(g, c.stacks().get(s), s * row, row);
            g.setColor(theme.paper());
            g.fillRect(gutter.left(), (int) (s * row) + 1, width - gutter.left() - gutter.right(), (int) row - 2);
            if (c.limited()) {
                area(g, s, true, s * row, row, gutter, width);
                area(g, s, false, s * row, row, gutter, width);
            }
            g.setColor(theme.faint());
            g.fillRect(gutter.left(), (int) ((s + 0.5) * row), width - gutter.left() - gutter.right(), theme.px(1));
        }
    }

    private void name(Graphics2D g, Stack stack, double top, double row) {
        boolean two = row > theme.px(24);
        g.setColor(theme.of(stack));
        g.setStroke(theme.stroke(ChartStyle.of(stack)));
        double line = top + row * (two ? 0.3 : 0.5);
        g.draw(new Line2D.Double(theme.px(4), line, theme.px(28), line));
        g.setColor(theme.ink());
        g.setFont(theme.font(stack == Stack.fullest(view.model().design()) ? Font.BOLD : Font.PLAIN, 11.5));
        FontMetrics m = g.getFontMetrics();
        g.drawString(stack.key(), theme.px(32), (float) (line + m.getAscent() * 0.36));
        Optional<StackVerdict> v = two && figures != null
            ? figures.assessment().verdicts().stream().filter(x -> x.stack() == stack).findFirst() : Optional.empty();
        if (v.isPresent()) {
            boolean good = v.get().asked() && v.get().gaps().isEmpty();
            g.setColor(!v.get().asked() || !figures.of(view) ? theme.faint() : good ? theme.good() : theme.bad());
            g.setFont(theme.font(Font.PLAIN, 11));
            g.drawString(worst(v.get()), theme.px(32), (float) (top + row * 0.82));
        }
    }

    private static String worst(StackVerdict v) {
        if (!v.asked()) {
            return QuantityText.ppb(v.worst().residualPerG()) + " ppb/g, " + QuantityText.hz(v.worst().frequencyHz());
        }
        return QuantityText.db(Math.abs(v.worst().marginDb())).replace(".00 dB", " dB")
            + (v.worst().marginDb() < 0 ? " over, " : " spare, ")
            + QuantityText.hz(v.worst().frequencyHz());
    }

    private void area(Graphics2D g, int stack, boolean above, double top, double row, BandLayout gutter, int width) {
        double[] f = view.curves().frequencyHz();
        double[] margin = view.curves().marginDb(stack);
        double middle = top + row / 2;
        Path2D path = new Path2D.Double();
        path.moveTo(gutter.left(), middle);
        double before = 0;
        double beforeX = gutter.left();
        for (int i = 0; i < f.length; i++) {
            double m = Math.max(-FULL_DB, Math.min(FULL_DB, margin[i]));
            double x = gutter.x(view.model().design(), f[i], width);
            if (i > 0 && m > 0 != before > 0) {
                path.lineTo(beforeX + (x - beforeX) * before / (before - m), middle);
            }
            double part = above ? Math.max(0, m) : Math.min(0, m);
            path.lineTo(x, middle - (row / 2 - 1) * part / FULL_DB);
            before = m;
            beforeX = x;
        }
        path.lineTo(width - gutter.right(), middle);
        path.closePath();
        g.setColor(above ? theme.goodArea() : theme.badArea());
        g.fill(path);
    }
}
