package quietband.report.svg;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.RenderedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import javax.imageio.ImageIO;
import quietband.report.file.NumberFormat;

/** The elements of a picture as SVG 1.1 text. Coordinates are those of the picture, in px with two decimals. */
final class SvgElements {

    /** Of the segments of a path: move, line, quadratic, cubic, close. */
    private static final int[] NUMBERS = {2, 2, 4, 6, 0};

    private final String name;
    private final StringBuilder body = new StringBuilder(1 << 14);
    private final Map<String, String> clips = new LinkedHashMap<>();

    /** For a picture with a name, which begins every id. */
    SvgElements(String name) {
        this.name = name;
    }

    /** What is defined for use by others, and then the elements in the order they were drawn. */
    void writeTo(StringBuilder out) {
        if (!clips.isEmpty()) {
            out.append("<defs>");
            clips.forEach((path, id) -> out.append("<clipPath id=\"").append(id).append("\"><path d=\"").append(path)
                .append("\"/></clipPath>"));
            out.append("</defs>");
        }
        out.append(body);
    }

    /** The outline of a shape; the shape is in px of the picture. */
    void outline(Shape shape, BasicStroke stroke, Color color, Shape clip) {
        String path = path(shape);
        if (path.isEmpty()) {
            return;
        }
        body.append("<path d=\"").append(path).append("\" fill=\"none\"");
        colour("stroke", color);
        body.append(" stroke-width=\"");
        number(body, stroke.getLineWidth());
        body.append('"');
        if (stroke.getEndCap() != BasicStroke.CAP_BUTT) {
            body.append(" stroke-linecap=\"").append(stroke.getEndCap() == BasicStroke.CAP_ROUND ? "round" : "square").append('"');
        }
        if (stroke.getLineJoin() != BasicStroke.JOIN_MITER) {
            body.append(" stroke-linejoin=\"").append(stroke.getLineJoin() == BasicStroke.JOIN_ROUND ? "round" : "bevel").append('"');
        }
        if (stroke.getDashArray() != null) {
            dashes(stroke);
        }
        end(shape.getBounds2D(), stroke.getLineWidth() * Math.max(1, stroke.getMiterLimit()), clip);
    }

    private void dashes(BasicStroke stroke) {
        body.append(" stroke-dasharray=\"");
        for (int i = 0; i < stroke.getDashArray().length; i++) {
            body.append(i == 0 ? "" : ",");
            number(body, stroke.getDashArray()[i]);
        }
        body.append('"');
        if (stroke.getDashPhase() != 0) {
            body.append(" stroke-dashoffset=\"");
            number(body, stroke.getDashPhase());
            body.append('"');
        }
    }

    /** A filled shape. */
    void filled(Shape shape, Color color, Shape clip) {
        String path = path(shape);
        if (path.isEmpty()) {
            return;
        }
        body.append("<path d=\"").append(path).append('"');
        if (shape.getPathIterator(null).getWindingRule() == PathIterator.WIND_EVEN_ODD) {
            body.append(" fill-rule=\"evenodd\"");
        }
        colour("fill", color);
        end(shape.getBounds2D(), 0, clip);
    }

    /** Text whose baseline begins at a place before the transform, which turns and shifts it. */
    void text(String text, Point2D at, Font font, Color color, AffineTransform transform, Shape clip) {
        boolean moved = transform.getType() == AffineTransform.TYPE_IDENTITY || transform.getType() == AffineTransform.TYPE_TRANSLATION;
        body.append("<text x=\"");
        number(body, moved ? at.getX() + transform.getTranslateX() : at.getX());
        body.append("\" y=\"");
        number(body, moved ? at.getY() + transform.getTranslateY() : at.getY());
        body.append('"');
        if (!moved) {
            matrix(transform);
        }
        body.append(" font-family=\"").append(family(font)).append("\" font-size=\"");
        number(body, font.getSize2D());
        body.append('"').append(font.isBold() ? " font-weight=\"bold\"" : "").append(font.isItalic() ? " font-style=\"italic\"" : "");
        colour("fill", color);
        if (clip != null) {
            body.append(" clip-path=\"url(#").append(clipped(moved ? clip : before(transform, clip))).append(")\"");
        }
        body.append('>').append(escaped(text)).append("</text>");
    }

    /** An element's clip is in the element's own coordinates. */
    static Shape before(AffineTransform transform, Shape clip) {
        try {
            return transform.createInverse().createTransformedShape(clip);
        } catch (java.awt.geom.NoninvertibleTransformException e) {
            return clip;
        }
    }

    /** A picture within the picture, embedded. */
    void image(RenderedImage image, AffineTransform transform, Shape clip) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "png", bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        body.append("<image width=\"").append(image.getWidth()).append("\" height=\"").append(image.getHeight()).append('"');
        matrix(transform);
        if (clip != null) {
            body.append(" clip-path=\"url(#").append(clipped(before(transform, clip))).append(")\"");
        }
        body.append(" href=\"data:image/png;base64,").append(Base64.getEncoder().encodeToString(bytes.toByteArray())).append("\"/>");
    }

    /** An image of any kind as one that can be written. */
    static BufferedImage solid(java.awt.Image image) {
        if (image instanceof BufferedImage buffered) {
            return buffered;
        }
        BufferedImage solid = new BufferedImage(image.getWidth(null), image.getHeight(null), BufferedImage.TYPE_INT_ARGB);
        java.awt.Graphics2D g = solid.createGraphics();
        g.drawImage(image, 0, 0, null);
        g.dispose();
        return solid;
    }

    private void matrix(AffineTransform t) {
        double[] m = new double[6];
        t.getMatrix(m);
        body.append(" transform=\"matrix(");
        for (int i = 0; i < 6; i++) {
            body.append(i == 0 ? "" : ",");
            // two decimals are not enough for what turns and stretches
            body.append(i < 4 ? NumberFormat.json(m[i] == 0 ? 0 : m[i]) : "");
            if (i >= 4) {
                number(body, m[i]);
            }
        }
        body.append(")\"");
    }

    private void colour(String what, Color color) {
        body.append(' ').append(what).append("=\"#");
        for (int part : new int[] {color.getRed(), color.getGreen(), color.getBlue()}) {
            body.append(Character.forDigit(part >> 4, 16)).append(Character.forDigit(part & 15, 16));
        }
        body.append('"');
        if (color.getAlpha() < 255) {
            body.append(' ').append(what).append("-opacity=\"");
            number(body, color.getAlpha() / 255.0);
            body.append('"');
        }
    }

    /** Ends an element, with its clip where it reaches beyond it. */
    private void end(Rectangle2D bounds, double around, Shape clip) {
        Rectangle2D.Double reach = new Rectangle2D.Double(bounds.getX() - around, bounds.getY() - around,
            bounds.getWidth() + 2 * around, bounds.getHeight() + 2 * around);
        if (clip != null && !clip.contains(reach)) {
            body.append(" clip-path=\"url(#").append(clipped(clip)).append(")\"");
        }
        body.append("/>");
    }

    private String clipped(Shape clip) {
        return clips.computeIfAbsent(path(clip), p -> name + "-clip" + (clips.size() + 1));
    }

    private static String family(Font font) {
        return switch (font.getName()) {
            case Font.SANS_SERIF, Font.DIALOG -> "sans-serif";
            case Font.SERIF -> "serif";
            case Font.MONOSPACED, Font.DIALOG_INPUT -> "monospace";
            default -> escaped(font.getFamily(java.util.Locale.ROOT));
        };
    }

    /** Text as it may stand between tags and in double quotes. */
    static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\"", "&quot;");
    }

    private static String path(Shape shape) {
        StringBuilder out = new StringBuilder();
        double[] c = new double[6];
        for (PathIterator i = shape.getPathIterator(null); !i.isDone(); i.next()) {
            int kind = i.currentSegment(c);
            out.append("MLQCZ".charAt(kind));
            for (int k = 0; k < NUMBERS[kind]; k++) {
                out.append(k == 0 ? "" : " ");
                number(out, c[k]);
            }
        }
        return out.toString();
    }

    /** Two decimals at most; what is no number or beyond any picture is drawn at its edge. */
    static void number(StringBuilder out, double value) {
        long hundredths = Math.round(Math.max(-1e9, Math.min(1e9, value)) * 100);
        if (hundredths < 0) {
            out.append('-');
            hundredths = -hundredths;
        }
        out.append(hundredths / 100);
        int rest = (int) (hundredths % 100);
        if (rest != 0) {
            out.append('.').append((char) ('0' + rest / 10));
            if (rest % 10 != 0) {
                out.append((char) ('0' + rest % 10));
            }
        }
    }
}
