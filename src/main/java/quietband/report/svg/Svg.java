package quietband.report.svg;

import java.awt.Graphics2D;
import java.util.function.Consumer;

/** What is drawn by Java's two-dimensional graphics as SVG text: the same bytes for the same drawing. */
public final class Svg {

    private Svg() { }

    /**
     * Draws.
     *
     * @param name   of the picture, letters, digits and hyphens: its id, and the beginning of each in it, so that several fit in one page
     * @param title  what it shows, for those who do not see it
     * @param width  in px
     * @param height in px
     */
    public static String draw(String name, String title, int width, int height, Consumer<Graphics2D> drawing) {
        SvgElements elements = new SvgElements(name);
        drawing.accept(new SvgGraphics(elements));
        StringBuilder out = new StringBuilder(1 << 14);
        out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" id=\"").append(name).append("\" role=\"img\" width=\"").append(width)
            .append("\" height=\"").append(height).append("\" viewBox=\"0 0 ").append(width).append(' ').append(height)
            .append("\"><title>").append(SvgElements.escaped(title)).append("</title>");
        elements.writeTo(out);
        return out.append("</svg>\n").toString();
    }
}
