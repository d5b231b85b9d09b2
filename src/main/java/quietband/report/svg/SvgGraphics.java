package quietband.report.svg;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Paint;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.font.TextLayout;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.text.AttributedCharacterIterator;
import java.util.Map;

/**
 * Java's two-dimensional graphics onto SVG elements: what charts need of it, in plain colours, without fonts of the machine.
 */
final class SvgGraphics extends ShapeGraphics {

    private static final FontRenderContext FONTS = new FontRenderContext(null, true, true);

    private final SvgElements elements;
    private final RenderingHints hints = new RenderingHints(null);
    private AffineTransform transform = new AffineTransform();
    private Shape clip;
    private Color color = Color.BLACK;
    private Color background = Color.WHITE;
    private Stroke stroke = new BasicStroke();
    private Composite composite = AlphaComposite.SrcOver;
    private Font font = new ChartFont(12);

    /** Onto the elements of a picture. */
    SvgGraphics(SvgElements elements) {
        this.elements = elements;
    }

    @Override
    public Graphics create() {
        SvgGraphics copy = new SvgGraphics(elements);
        copy.hints.add(hints);
        copy.transform = getTransform();
        copy.clip = clip;
        copy.color = color;
        copy.background = background;
        copy.stroke = stroke;
        copy.composite = composite;
        copy.font = font;
        return copy;
    }

    @Override
    public void dispose() {
        // holds nothing
    }

    @Override
    public void draw(Shape s) {
        double scale = Math.sqrt(Math.abs(transform.getDeterminant()));
        if (stroke instanceof BasicStroke plain) {
            elements.outline(onto(s), scaled(plain, (float) scale), seen(), clip);
        } else {
            fill(stroke.createStrokedShape(s));
        }
    }

    private static BasicStroke scaled(BasicStroke s, float scale) {
        if (scale == 1) {
            return s;
        }
        float[] dashes = s.getDashArray();
        for (int i = 0; dashes != null && i < dashes.length; i++) {
            dashes[i] *= scale;
        }
        return new BasicStroke(s.getLineWidth() * scale, s.getEndCap(), s.getLineJoin(), s.getMiterLimit(), dashes,
            s.getDashPhase() * scale);
    }

    @Override
    public void fill(Shape s) {
        elements.filled(onto(s), seen(), clip);
    }

    private Shape onto(Shape s) {
        return transform.isIdentity() ? s : transform.createTransformedShape(s);
    }

    /** The colour with the composite's share of opacity. */
    private Color seen() {
        float alpha = composite instanceof AlphaComposite a ? a.getAlpha() : 1;
        return alpha == 1 ? color : new Color(color.getRed(), color.getGreen(), color.getBlue(), Math.round(color.getAlpha() * alpha));
    }

    @Override
    public void drawString(String text, float x, float y) {
        if (!text.isEmpty()) {
            elements.text(text, new Point2D.Double(x, y), font, seen(), transform, within(text, x, y) ? null : clip);
        }
    }

    /** Whether a box that no text of this length leaves is inside the clip. */
    private boolean within(String text, float x, float y) {
        double size = font.getSize2D();
        return clip == null || clip.contains(onto(new Rectangle2D.Double(x - size, y - 1.5 * size, size * (text.length() + 2), 3 * size))
            .getBounds2D());
    }

    /** Text of several fonts is drawn as the outlines of its letters. */
    @Override
    public void drawString(AttributedCharacterIterator text, float x, float y) {
        fill(new TextLayout(text, FONTS).getOutline(AffineTransform.getTranslateInstance(x, y)));
    }

    @Override
    public void drawGlyphVector(GlyphVector glyphs, float x, float y) {
        fill(glyphs.getOutline(x, y));
    }

    @Override
    public boolean drawImage(Image image, AffineTransform to, ImageObserver observer) {
        AffineTransform all = getTransform();
        all.concatenate(to);
        elements.image(SvgElements.solid(image), all, clip);
        return true;
    }

    @Override
    public void drawRenderedImage(RenderedImage image, AffineTransform to) {
        AffineTransform all = getTransform();
        all.concatenate(to);
        elements.image(image, all, clip);
    }

    @Override
    public boolean hit(Rectangle rect, Shape s, boolean onStroke) {
        return onto(onStroke ? stroke.createStrokedShape(s) : s).intersects(rect);
    }

    @Override
    public FontMetrics getFontMetrics(Font f) {
        return new SvgFontMetrics(f, FONTS);
    }

    @Override
    public FontRenderContext getFontRenderContext() {
        return FONTS;
    }

    /** None: a file has no device. */
    @Override
    public GraphicsConfiguration getDeviceConfiguration() {
        return null;
    }

    @Override
    public void clip(Shape s) {
        Shape more = onto(s);
        if (clip == null) {
            clip = more;
        } else if (clip instanceof Rectangle2D a && more instanceof Rectangle2D b) {
            Rectangle2D both = a.createIntersection(b);
            clip = both.isEmpty() ? new Rectangle2D.Double() : both;
        } else {
            Area both = new Area(clip);
            both.intersect(new Area(more));
            clip = both.isRectangular() ? both.getBounds2D() : both;
        }
    }

    @Override
    public void setClip(Shape s) {
        clip = s == null ? null : onto(s);
    }

    @Override
    public Shape getClip() {
        return clip == null ? null : SvgElements.before(transform, clip);
    }

    /** Plain colours only. */
    @Override
    public void setPaint(Paint paint) {
        if (paint instanceof Color c) {
            color = c;
        } else if (paint != null) {
            throw new IllegalArgumentException("charts are drawn in plain colours, not with " + paint.getClass().getSimpleName());
        }
    }

    @Override
    public Paint getPaint() {
        return color;
    }

    @Override
    public void setBackground(Color c) {
        background = c;
    }

    @Override
    public Color getBackground() {
        return background;
    }

    @Override
    public void setStroke(Stroke s) {
        stroke = s;
    }

    @Override
    public Stroke getStroke() {
        return stroke;
    }

    @Override
    public void setComposite(Composite c) {
        composite = c;
    }

    @Override
    public Composite getComposite() {
        return composite;
    }

    @Override
    public void setFont(Font f) {
        font = f == null ? font : f;
    }

    @Override
    public Font getFont() {
        return font;
    }

    @Override
    public void setPaintMode() {
        composite = AlphaComposite.SrcOver;
    }

    @Override
    public void setRenderingHint(RenderingHints.Key key, Object value) {
        if (value != null) {
            hints.put(key, value);
        }
    }

    @Override
    public Object getRenderingHint(RenderingHints.Key key) {
        return hints.get(key);
    }

    @Override
    public void setRenderingHints(Map<?, ?> all) {
        hints.clear();
        addRenderingHints(all);
    }

    @Override
    public void addRenderingHints(Map<?, ?> more) {
        hints.putAll(more);
    }

    @Override
    public RenderingHints getRenderingHints() {
        return (RenderingHints) hints.clone();
    }

    @Override
    public void translate(double x, double y) {
        transform.translate(x, y);
    }

    @Override
    public void rotate(double theta) {
        transform.rotate(theta);
    }

    @Override
    public void scale(double x, double y) {
        transform.scale(x, y);
    }

    @Override
    public void shear(double x, double y) {
        transform.shear(x, y);
    }

    @Override
    public void transform(AffineTransform t) {
        transform.concatenate(t);
    }

    @Override
    public void setTransform(AffineTransform t) {
        transform = new AffineTransform(t);
    }

    @Override
    public AffineTransform getTransform() {
        return new AffineTransform(transform);
    }
}
