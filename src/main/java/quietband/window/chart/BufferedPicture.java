package quietband.window.chart;

import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.function.Consumer;
import javax.swing.JComponent;

/**
 * The picture of a widget, drawn in memory and kept until it is out of date: smooth lines drawn straight to a display cost several times
 * as much, and what lies over the widget moves without drawing it anew.
 */
public final class BufferedPicture {

    private BufferedImage image;

    /** It is to be drawn anew the next time. */
    public void outdated() {
        image = null;
    }

    /** Puts the picture on the screen, at the screen's own resolution; draws it first when that is needed. */
    public void paint(Graphics screen, JComponent widget, Consumer<Graphics2D> draw) {
        Graphics2D to = (Graphics2D) screen;
        double right = to.getTransform().getScaleX();
        double down = to.getTransform().getScaleY();
        int width = Math.max(1, (int) Math.ceil(widget.getWidth() * right));
        int height = Math.max(1, (int) Math.ceil(widget.getHeight() * down));
        if (image == null || image.getWidth() != width || image.getHeight() != height) {
            image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
            Graphics2D g = image.createGraphics();
            g.setColor(widget.getBackground());
            g.fillRect(0, 0, width, height);
            g.scale(right, down);
            draw.accept(g);
            g.dispose();
        }
        to.drawImage(image, 0, 0, widget.getWidth(), widget.getHeight(), null);
    }
}
