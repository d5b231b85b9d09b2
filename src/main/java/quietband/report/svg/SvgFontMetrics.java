package quietband.report.svg;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.font.FontRenderContext;
import java.awt.font.LineMetrics;

/** Sizes of a font's text in px, from the font itself, without a device; see {@link ChartFont}. */
final class SvgFontMetrics extends FontMetrics {

    private static final long serialVersionUID = 1;

    private final transient FontRenderContext context;
    private final transient LineMetrics line;

    SvgFontMetrics(Font font, FontRenderContext context) {
        super(font);
        this.context = context;
        this.line = font.getLineMetrics("Xg", context);
    }

    @Override
    public FontRenderContext getFontRenderContext() {
        return context;
    }

    @Override
    public int getAscent() {
        return Math.round(line.getAscent());
    }

    @Override
    public int getDescent() {
        return Math.round(line.getDescent());
    }

    @Override
    public int getLeading() {
        return Math.round(line.getDescent() + line.getLeading()) - Math.round(line.getDescent());
    }

    @Override
    public int charWidth(char c) {
        return stringWidth(String.valueOf(c));
    }

    @Override
    public int charsWidth(char[] data, int offset, int length) {
        return stringWidth(new String(data, offset, length));
    }

    @Override
    public int stringWidth(String text) {
        return (int) Math.round(font.getStringBounds(text, context).getWidth());
    }
}
