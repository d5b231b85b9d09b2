package quietband.window.chart;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.swing.JPanel;
import quietband.model.Stack;
import quietband.report.file.QuantityText;
import quietband.response.ResidualCurves;
import quietband.window.work.DesignView;

/**
 * What the curves are at one frequency: a line across the chart and the figures beside it. It stands at computed points only, so that
 * nothing is interpolated; the mouse puts it there, or keys. Lies over the chart and lets the mouse through.
 */
public final class ChartCursor extends JPanel {

    private static final long serialVersionUID = 1;

    private transient Theme theme;
    private transient DesignView view;
    private int axis;
    private int point = -1;
    private boolean byMouse;

    ChartCursor(Theme theme) {
        this.theme = theme;
        setName("reading");
        setOpaque(false);
    }

    void theme(Theme changed) {
        theme = changed;
        repaint();
    }

    /** The curves it reads; it keeps its frequency. */
    void show(DesignView next, int index) {
        double f = point < 0 ? 0 : frequency();
        view = next;
        axis = index;
        if (point >= 0) {
            point = nearest(f);
        }
        changed();
    }

    private double frequency() {
        return view.curves().frequencyHz()[point];
    }

    private int nearest(double f) {
        double[] all = view.curves().frequencyHz();
        int at = Arrays.binarySearch(all, f);
        int above = Math.min(all.length - 1, at < 0 ? -at - 1 : at);
        int below = Math.max(0, above - 1);
        return f / all[below] < all[above] / f ? below : above;
    }

    /** Reads where the mouse is. */
    void mouse(int x) {
        if (view != null) {
            byMouse = true;
            point = nearest(BandLayout.of(theme, getWidth()).frequency(view.model().design(), x, getWidth()));
            changed();
        }
    }

    /** The mouse has gone; what keys have put there stays. */
    void gone() {
        if (byMouse) {
            away();
        }
    }

    /** Moves by points; starts at a frequency in Hz. */
    void move(int points, double start) {
        if (view != null) {
            byMouse = false;
            point = point < 0 ? nearest(start) : Math.max(0, Math.min(view.curves().frequencyHz().length - 1, point + points));
            changed();
        }
    }

    /** Ends it. */
    public void away() {
        point = -1;
        changed();
    }

    private void changed() {
        getAccessibleContext().setAccessibleDescription(String.join(", ", words()));
        repaint();
    }

    /** What it says, a line each: the frequency, every stack, the limit; empty when it is away. */
    public List<String> words() {
        List<String> words = new ArrayList<>();
        if (point >= 0 && view != null) {
            ResidualCurves c = view.curves();
            words.add(QuantityText.hz(frequency()) + ", ppb/g");
            for (int s = 0; s < c.stacks().size(); s++) {
                words.add(c.stacks().get(s).key() + " " + QuantityText.ppb(c.residualPerG()[s][axis][point]));
            }
            if (c.limited() && Double.isFinite(c.limitPerG()[axis][point])) {
                words.add("limit " + QuantityText.ppb(c.limitPerG()[axis][point]));
            }
        }
        return words;
    }

    @Override
    public boolean contains(int x, int y) {
        return false;
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        List<String> words = words();
        if (words.isEmpty()) {
            return;
        }
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        int x = (int) Math.round(BandLayout.of(theme, getWidth()).x(view.model().design(), frequency(), getWidth()));
        g.setColor(theme.faint());
        g.fillRect(x, theme.px(6), Math.max(1, theme.px(1)), getHeight() - theme.px(46));
        g.setFont(theme.font(Font.BOLD, 12));
        FontMetrics m = g.getFontMetrics();
        int pad = theme.px(6);
        int width = words.stream().mapToInt(m::stringWidth).max().orElse(0) + 2 * pad;
        int height = m.getHeight() * words.size() + 2 * pad;
        int left = Math.max(0, x + theme.px(10) + width < getWidth() ? x + theme.px(10) : x - theme.px(10) - width);
        int top = Math.max(theme.px(8), getHeight() - theme.px(48) - height);
        g.setColor(theme.paper());
        g.fillRect(left, top, width, height);
        g.setColor(theme.faint());
        g.drawRect(left, top, width, height);
        for (int i = 0; i < words.size(); i++) {
            g.setFont(theme.font(i == 0 ? Font.BOLD : Font.PLAIN, 12));
            g.setColor(colour(i - 1));
            g.drawString(words.get(i), left + pad, top + pad + m.getAscent() + i * m.getHeight());
        }
        g.dispose();
    }

    private Color colour(int stack) {
        List<Stack> stacks = view.curves().stacks();
        return stack < 0 ? theme.ink() : stack < stacks.size() ? theme.of(stacks.get(stack)) : theme.limit();
    }
}
