package quietband.window.card;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import javax.swing.JPanel;
import quietband.window.chart.BufferedPicture;
import quietband.window.chart.Theme;
import quietband.window.work.BackgroundFigures;

/** A drawn card beside others: a title and what it shows of the figures, at any size. */
public abstract class FigureCard extends JPanel {

    private static final long serialVersionUID = 1;

    private final String title;
    private final String tab;
    private final transient BufferedPicture drawn = new BufferedPicture();
    private transient Theme theme;
    private transient BackgroundFigures figures;

    /** @param tab the title in one short word, where there is little room */
    FigureCard(String title, String tab, Theme theme) {
        this.title = title;
        this.tab = tab;
        this.theme = theme;
        setName("card:" + title);
        getAccessibleContext().setAccessibleName(title);
    }

    String title() {
        return title;
    }

    public String tab() {
        return tab;
    }

    public Theme theme() {
        return theme;
    }

    public void theme(Theme changed) {
        theme = changed;
        revalidate();
        redraw();
    }

    public void show(BackgroundFigures next) {
        figures = next;
        getAccessibleContext().setAccessibleDescription(words(next));
        redraw();
    }

    /** What it shows, in words, for those who do not see it. */
    abstract String words(BackgroundFigures f);

    /** Draws the figures into a box whose upper left corner is at 0, 0. */
    abstract void draw(Graphics2D g, BackgroundFigures f, int width, int height);

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
        drawn.paint(graphics, this, this::draw);
    }

    private void draw(Graphics2D g) {
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
    }

    /** Draws it anew. */
    final void redraw() {
        drawn.outdated();
        repaint();
    }

    /** Writes a text with its base line at y. */
    void text(Graphics2D g, String text, double x, double y, Color colour, int style) {
        g.setFont(theme.font(style, 12));
        g.setColor(colour);
        g.drawString(text, (float) x, (float) y);
    }

    /** Writes a text into some room, a little smaller where it is long, and with an ellipsis where that is not enough. */
    void fitted(Graphics2D g, String text, double x, double y, double room, Color colour) {
        double size = 12;
        g.setFont(theme.font(Font.PLAIN, size));
        while (size > 10 && g.getFontMetrics().stringWidth(text) > room) {
            size -= 0.5;
            g.setFont(theme.font(Font.PLAIN, size));
        }
        String words = text;
        while (words.length() > 2 && g.getFontMetrics().stringWidth(words) > room) {
            words = words.substring(0, words.length() - 2).strip() + "\u2026";
        }
        g.setColor(colour);
        g.drawString(words, (float) x, (float) y);
    }

    /** Writes a text that ends at x. */
    void textLeftOf(Graphics2D g, String text, double x, double y, Color colour, int style) {
        g.setFont(theme.font(style, 12));
        text(g, text, x - g.getFontMetrics().stringWidth(text), y, colour, style);
    }
}
