package quietband.report.svg;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Image;
import java.awt.Polygon;
import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.BufferedImageOp;
import java.awt.image.ImageObserver;
import java.awt.image.renderable.RenderableImage;
import java.text.AttributedCharacterIterator;

/** Java's two-dimensional graphics traced back to few things: shapes that are outlined or filled, text, and images. */
abstract class ShapeGraphics extends Graphics2D {

    @Override
    public void drawString(String text, int x, int y) {
        drawString(text, (float) x, (float) y);
    }

    @Override
    public void drawString(AttributedCharacterIterator text, int x, int y) {
        drawString(text, (float) x, (float) y);
    }

    @Override
    public void drawImage(BufferedImage image, BufferedImageOp op, int x, int y) {
        drawImage(op == null ? image : op.filter(image, null), AffineTransform.getTranslateInstance(x, y), null);
    }

    @Override
    public void drawRenderableImage(RenderableImage image, AffineTransform to) {
        drawRenderedImage(image.createDefaultRendering(), to);
    }

    @Override
    public boolean drawImage(Image image, int x, int y, ImageObserver observer) {
        return drawImage(image, AffineTransform.getTranslateInstance(x, y), observer);
    }

    @Override
    public boolean drawImage(Image image, int x, int y, int width, int height, ImageObserver observer) {
        AffineTransform to = AffineTransform.getTranslateInstance(x, y);
        to.scale((double) width / image.getWidth(null), (double) height / image.getHeight(null));
        return drawImage(image, to, observer);
    }

    @Override
    public boolean drawImage(Image image, int x, int y, Color behind, ImageObserver observer) {
        return drawImage(image, x, y, image.getWidth(null), image.getHeight(null), behind, observer);
    }

    @Override
    public boolean drawImage(Image image, int x, int y, int width, int height, Color behind, ImageObserver observer) {
        fillRect(behind, x, y, width, height);
        return drawImage(image, x, y, width, height, observer);
    }

    @Override
    public boolean drawImage(Image image, int dx1, int dy1, int dx2, int dy2, int sx1, int sy1, int sx2, int sy2,
                             ImageObserver observer) {
        BufferedImage part = SvgElements.solid(image).getSubimage(sx1, sy1, sx2 - sx1, sy2 - sy1);
        return drawImage(part, dx1, dy1, dx2 - dx1, dy2 - dy1, observer);
    }

    @Override
    public boolean drawImage(Image image, int dx1, int dy1, int dx2, int dy2, int sx1, int sy1, int sx2, int sy2, Color behind,
                             ImageObserver observer) {
        fillRect(behind, dx1, dy1, dx2 - dx1, dy2 - dy1);
        return drawImage(image, dx1, dy1, dx2, dy2, sx1, sy1, sx2, sy2, observer);
    }

    @Override
    public Rectangle getClipBounds() {
        Shape s = getClip();
        return s == null ? null : s.getBounds();
    }

    @Override
    public void clipRect(int x, int y, int width, int height) {
        clip(new Rectangle2D.Double(x, y, width, height));
    }

    @Override
    public void setClip(int x, int y, int width, int height) {
        setClip(new Rectangle2D.Double(x, y, width, height));
    }

    @Override
    public void setColor(Color c) {
        setPaint(c);
    }

    @Override
    public Color getColor() {
        return (Color) getPaint();
    }

    @Override
    public void drawLine(int x1, int y1, int x2, int y2) {
        draw(new Line2D.Double(x1, y1, x2, y2));
    }

    @Override
    public void fillRect(int x, int y, int width, int height) {
        fill(new Rectangle2D.Double(x, y, width, height));
    }

    @Override
    public void clearRect(int x, int y, int width, int height) {
        fillRect(getBackground(), x, y, width, height);
    }

    private void fillRect(Color with, int x, int y, int width, int height) {
        Color before = getColor();
        setColor(with);
        fillRect(x, y, width, height);
        setColor(before);
    }

    @Override
    public void drawRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
        draw(new RoundRectangle2D.Double(x, y, width, height, arcWidth, arcHeight));
    }

    @Override
    public void fillRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
        fill(new RoundRectangle2D.Double(x, y, width, height, arcWidth, arcHeight));
    }

    @Override
    public void drawOval(int x, int y, int width, int height) {
        draw(new Ellipse2D.Double(x, y, width, height));
    }

    @Override
    public void fillOval(int x, int y, int width, int height) {
        fill(new Ellipse2D.Double(x, y, width, height));
    }

    @Override
    public void drawArc(int x, int y, int width, int height, int start, int extent) {
        draw(new Arc2D.Double(x, y, width, height, start, extent, Arc2D.OPEN));
    }

    @Override
    public void fillArc(int x, int y, int width, int height, int start, int extent) {
        fill(new Arc2D.Double(x, y, width, height, start, extent, Arc2D.PIE));
    }

    @Override
    public void drawPolyline(int[] x, int[] y, int n) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < n; i++) {
            if (i == 0) {
                path.moveTo(x[i], y[i]);
            } else {
                path.lineTo(x[i], y[i]);
            }
        }
        draw(path);
    }

    @Override
    public void drawPolygon(int[] x, int[] y, int n) {
        draw(new Polygon(x, y, n));
    }

    @Override
    public void fillPolygon(int[] x, int[] y, int n) {
        fill(new Polygon(x, y, n));
    }

    @Override
    public void setXORMode(Color c) {
        throw new UnsupportedOperationException("a file has no pixels to invert");
    }

    @Override
    public void copyArea(int x, int y, int width, int height, int dx, int dy) {
        throw new UnsupportedOperationException("a file has no pixels to copy");
    }

    @Override
    public void translate(int x, int y) {
        translate((double) x, (double) y);
    }

    @Override
    public void rotate(double theta, double x, double y) {
        translate(x, y);
        rotate(theta);
        translate(-x, -y);
    }
}
