package quietband.window;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import javax.swing.JPanel;

/** A drawn card beside others: a title and what it shows of the figures, at any size. */
abstract class Card extends JPanel {

    private static final long serialVersionUID = 1;

    private final String title;
    private transient Theme theme;
    private transient Figures figures;

    Card(String title, Theme theme) {
        this.title = title;
        this.theme = theme;
        setName("card:" + title);
        getAccessibleContext().setAccessibleName(title);
    }

    String title() {
        return title;
    }

    Theme theme() {
        return theme;
    }

    void theme(Theme changed) {
        theme = changed;
        revalidate();
        repaint();
    }

    void show(Figures next) {
        figures = next;
        getAccessibleContext().setAccessibleDescription(words(next));
        repaint();
    }

    /** What it shows, in words, for those who do not see it. */
    abstract String words(Figures f);

    /** Draws the figures into a box whose upper left corner is at 0, 0. */
    abstract void draw(Graphics2D g, Figures f, int width, int height);

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(theme.px(240), theme.px(170));
    }

    @Override
    public Dimension getMinimumSize() {
        return new Dimension(theme.px(120), theme.px(90));
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setColor(theme.paper());
        g.fillRect(0, 0, getWidth(), getHeight());
        g.setColor(theme.grid());
        g.drawRect(0, 0, getWidth() - 1, getHeight() - 1);
        int head = theme.px(20);
        text(g, title, theme.px(8), theme.px(15), theme.ink(), Font.BOLD);
        if (figures != null) {
            int pad = theme.px(8);
            g.translate(pad, head);
            draw(g, figures, getWidth() - 2 * pad, getHeight() - head - theme.px(6));
        }
        g.dispose();
    }

    /** Writes a text with its base line at y. */
    void text(Graphics2D g, String text, double x, double y, Color colour, int style) {
        g.setFont(theme.font(style, 12));
        g.setColor(colour);
        g.drawString(text, (float) x, (float) y);
    }

    /** Writes a text that ends at x. */
    void textLeftOf(Graphics2D g, String text, double x, double y, Color colour, int style) {
        g.setFont(theme.font(style, 12));
        text(g, text, x - g.getFontMetrics().stringWidth(text), y, colour, style);
    }
}
