package quietband.report.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.LogAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.axis.TickType;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;
import quietband.report.file.NumberFormat;

/**
 * A logarithmic axis as the trade draws it: labelled 10, 20, 50, 100, 200 ...; over many decades, or in little
 * width, at whole ones only.
 */
public final class TradeAxis extends LogAxis {

    private static final long serialVersionUID = 1;
    /** Least width of a decade, in sizes of the font, in which three labels fit. */
    private static final double ROOM = 9;
    /** Least height of a decade, in sizes of the font, in which they do. */
    private static final double HEIGHT = 3.2;

    /**
     * An axis with a fixed range.
     *
     * @param from above 0
     * @param to   above {@code from}
     */
    public TradeAxis(String label, double from, double to) {
        super(label);
        setRange(from, to);
        setAutoTickUnitSelection(false);
        ChartFrame.dressed(this, ChartStyle.FONT, ChartStyle.INK, ChartStyle.FAINT);
        setTickMarkPaint(ChartStyle.FAINT);
    }

    @Override
    @SuppressWarnings("rawtypes")
    public List refreshTicks(Graphics2D g, AxisState state, Rectangle2D area, RectangleEdge edge) {
        boolean level = RectangleEdge.isTopOrBottom(edge);
        TextAnchor anchor = level ? TextAnchor.TOP_CENTER : TextAnchor.CENTER_RIGHT;
        double low = getRange().getLowerBound();
        double high = getRange().getUpperBound();
        double decades = StrictMath.log10(high / low);
        double room = (level ? area.getWidth() : area.getHeight()) / decades / getTickLabelFont().getSize2D();
        boolean few = decades > 4 || room < (level ? ROOM : HEIGHT);
        List<NumberTick> ticks = new ArrayList<>();
        for (int e = (int) Math.floor(StrictMath.log10(low)); e <= (int) Math.ceil(StrictMath.log10(high)); e++) {
            for (int digit = 1; digit <= 9; digit++) {
                double value = digit * StrictMath.pow(10, e);
                if (value >= low * (1 - 1e-9) && value <= high * (1 + 1e-9)) {
                    boolean labelled = few ? digit == 1 : digit == 1 || digit == 2 || digit == 5;
                    ticks.add(new NumberTick(labelled ? TickType.MAJOR : TickType.MINOR, value,
                        labelled ? label(value) : "", anchor, TextAnchor.CENTER, 0));
                }
            }
        }
        return ticks;
    }

    /** Plain up to 9999 and down to 0.0001, then as powers of ten. */
    public static String label(double value) {
        if (value >= 0.9e-4 && value < 1e4) {
            String text = NumberFormat.brief(value, 2);
            return text.contains(".") ? text.replaceAll("\\.?0+$", "") : text;
        }
        int e = (int) Math.floor(StrictMath.log10(value * (1 + 1e-9)));
        return Math.round(value / StrictMath.pow(10, e)) + "e" + e;
    }
}
