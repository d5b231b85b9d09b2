package quietband.report.svg;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.font.LineMetrics;
import java.awt.geom.Rectangle2D;

/**
 * A sans-serif font that knows its sizes itself: a page's reader has fonts of his own, so charts are laid out for one that is wide
 * among them, come out alike on every machine, and need no font where they are made. Widths and heights are those of DejaVu Sans
 * 2.37, from its file.
 */
public final class ChartFont extends Font {

    private static final long serialVersionUID = 1;

    /** Of widths and heights, to the em. */
    private static final double UNITS = 2048;
    private static final int ASCENT = 1901;
    private static final int DESCENT = 483;
    private static final int BAR = 1272;
    /** From the space to the tilde. */
    private static final int[] BASIC = {
        651, 821, 942, 1716, 1303, 1946, 1597, 563, 799, 799, 1024, 1716, 651, 739, 651, 690,
        1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 690, 690, 1716, 1716, 1716, 1087,
        2048, 1401, 1405, 1430, 1577, 1294, 1178, 1587, 1540, 604, 604, 1343, 1141, 1767, 1532, 1612,
        1235, 1612, 1423, 1300, 1251, 1499, 1401, 2025, 1403, 1251, 1403, 799, 690, 799, 1716, 1024,
        1024, 1255, 1300, 1126, 1300, 1260, 721, 1300, 1298, 569, 569, 1186, 569, 1995, 1298, 1253,
        1300, 1300, 842, 1067, 803, 1298, 1212, 1675, 1212, 1212, 1075, 1303, 690, 1303, 1716};
    /** From the no-break space to the y with diaeresis. */
    private static final int[] LATIN_1 = {
        651, 821, 1303, 1303, 1303, 1303, 690, 1024, 1024, 2048, 965, 1253, 1716, 739, 2048, 1024,
        1024, 1716, 821, 821, 1024, 1303, 1303, 651, 1024, 821, 965, 1253, 1985, 1985, 1985, 1087,
        1401, 1401, 1401, 1401, 1401, 1401, 1995, 1430, 1294, 1294, 1294, 1294, 604, 604, 604, 604,
        1587, 1532, 1612, 1612, 1612, 1612, 1612, 1716, 1612, 1499, 1499, 1499, 1499, 1251, 1239, 1290,
        1255, 1255, 1255, 1255, 1255, 1255, 2011, 1126, 1260, 1260, 1260, 1260, 569, 569, 569, 569,
        1253, 1298, 1253, 1253, 1253, 1253, 1253, 1716, 1253, 1298, 1298, 1298, 1298, 1212, 1300, 1212};
    /** Of any other sign: that of most mathematical ones, more than that of most letters. */
    private static final int OTHER = 1716;

    /** Of a size in px. Not by the name of a chart's own default font, whose equal would be taken for no change. */
    public ChartFont(int size) {
        super(DIALOG, PLAIN, size);
    }

    /** How far a text goes, px. */
    double width(String text) {
        int sum = 0;
        for (int i = 0; i < text.length(); i++) {
            sum += units(text.charAt(i));
        }
        return of(sum);
    }

    private static int units(char c) {
        if (c >= ' ' && c - ' ' < BASIC.length) {
            return BASIC[c - ' '];
        }
        return c >= '\u00a0' && c - '\u00a0' < LATIN_1.length ? LATIN_1[c - '\u00a0'] : OTHER;
    }

    private float of(int units) {
        return (float) (units * getSize2D() / UNITS);
    }

    @Override
    public Rectangle2D getStringBounds(String text, FontRenderContext context) {
        return new Rectangle2D.Double(0, -of(ASCENT), width(text), of(ASCENT + DESCENT));
    }

    @Override
    public LineMetrics getLineMetrics(String text, FontRenderContext context) {
        return new Line(text.length());
    }

    /** Heights of a line of text, without a space between lines. */
    private final class Line extends LineMetrics {

        private final int length;

        Line(int length) {
            this.length = length;
        }

        @Override
        public int getNumChars() {
            return length;
        }

        @Override
        public float getAscent() {
            return of(ASCENT);
        }

        @Override
        public float getDescent() {
            return of(DESCENT);
        }

        @Override
        public float getLeading() {
            return 0;
        }

        @Override
        public float getHeight() {
            return of(ASCENT + DESCENT);
        }

        @Override
        public int getBaselineIndex() {
            return ROMAN_BASELINE;
        }

        @Override
        public float[] getBaselineOffsets() {
            return new float[] {0, -of(ASCENT - DESCENT) / 2, -of(ASCENT)};
        }

        @Override
        public float getStrikethroughOffset() {
            return -of(BAR) / 2;
        }

        @Override
        public float getStrikethroughThickness() {
            return getUnderlineThickness();
        }

        @Override
        public float getUnderlineOffset() {
            return of(DESCENT) / 4;
        }

        @Override
        public float getUnderlineThickness() {
            return of(DESCENT) / 5;
        }
    }
}
