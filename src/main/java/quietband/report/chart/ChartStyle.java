package quietband.report.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import quietband.model.Stack;
import quietband.report.svg.ChartFont;

/**
 * How things are drawn, the same in every chart: lines differ in lightness, dashes and markers, not in hue alone, so that
 * they are told apart on a grey print and by colour-blind eyes.
 *
 * @param colour of line and marker
 * @param width  of the line, in px
 * @param dash   lengths of dashes and spaces in px; empty for a full line
 * @param marker what sits on the line here and there; null for none
 */
public record ChartStyle(Color colour, float width, List<Float> dash, Shape marker) {

    public static final Color INK = new Color(0x18222B);
    public static final Color FAINT = new Color(0x5B6670);
    public static final Color GRID = new Color(0xD5D9DC);
    public static final Color PAPER = Color.WHITE;
    public static final Font FONT = new ChartFont(12);

    private static final Color ORANGE = new Color(0xC96A00);
    private static final Color BLUE = new Color(0x2A86C8);
    private static final Color GREEN = new Color(0x00785A);
    private static final Color VIOLET = new Color(0x9B5BA5);

    /** What must not be exceeded. */
    public static final ChartStyle LIMIT = new ChartStyle(new Color(0xB3122E), 2.2f, List.of(10f, 4f), null);
    /** What somebody must reach. */
    public static final ChartStyle NEED_SPRINGS = new ChartStyle(ORANGE, 1.6f, List.of(3f, 3f), null);
    /** What somebody must reach. */
    public static final ChartStyle NEED_CORRECTION = new ChartStyle(BLUE, 1.6f, List.of(3f, 3f), null);
    /** What the springs give. */
    public static final ChartStyle SPRINGS = new ChartStyle(ORANGE, 2.2f, List.of(), triangle());
    /** What the cancellation gives. */
    public static final ChartStyle CORRECTION = new ChartStyle(BLUE, 2.2f, List.of(), square());

    private static final List<ChartStyle> OTHERS = List.of(
        new ChartStyle(BLUE, 1.6f, List.of(), square()),
        new ChartStyle(ORANGE, 1.6f, List.of(7f, 3f), triangle()),
        new ChartStyle(GREEN, 1.6f, List.of(2f, 3f), circle()),
        new ChartStyle(VIOLET, 1.6f, List.of(9f, 3f, 2f, 3f), diamond()),
        new ChartStyle(FAINT, 1.6f, List.of(4f, 2f), square()),
        new ChartStyle(INK, 1.2f, List.of(1f, 2f), triangle()),
        new ChartStyle(new Color(0x7A4A00), 1.6f, List.of(12f, 4f), circle()),
        new ChartStyle(new Color(0x3C4FB0), 1.6f, List.of(5f, 2f, 1f, 2f), diamond()));

    public ChartStyle {
        dash = List.copyOf(dash);
    }

    /** The line of a stack. */
    public static ChartStyle of(Stack stack) {
        return switch (stack) {
            case BARE -> new ChartStyle(FAINT, 1.5f, List.of(9f, 3f, 2f, 3f), null);
            case ISOLATED -> new ChartStyle(ORANGE, 1.7f, List.of(7f, 3f), triangle());
            case CANCELLED -> new ChartStyle(BLUE, 1.7f, List.of(2f, 2.5f), square());
            case COMBINED -> new ChartStyle(INK, 2.6f, List.of(), null);
        };
    }

    /** The n-th of several lines that have no meaning of their own; repeats after eight. */
    public static ChartStyle number(int n) {
        return OTHERS.get(n % OTHERS.size());
    }

    /** The stroke of the line. */
    public BasicStroke stroke() {
        if (dash.isEmpty()) {
            return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
        }
        float[] lengths = new float[dash.size()];
        for (int i = 0; i < lengths.length; i++) {
            lengths[i] = dash.get(i);
        }
        return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, lengths, 0);
    }

    private static Shape square() {
        return new Rectangle2D.Double(-3, -3, 6, 6);
    }

    private static Shape circle() {
        return new Ellipse2D.Double(-3.2, -3.2, 6.4, 6.4);
    }

    private static Shape triangle() {
        return polygon(0, -4, 3.8, 3, -3.8, 3);
    }

    private static Shape diamond() {
        return polygon(0, -4.2, 4.2, 0, 0, 4.2, -4.2, 0);
    }

    private static Shape polygon(double... xy) {
        Path2D path = new Path2D.Double();
        path.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            path.lineTo(xy[i], xy[i + 1]);
        }
        path.closePath();
        return path;
    }
}
