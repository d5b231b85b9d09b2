package quietband.report.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.text.TextUtils;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;

/** What every chart has around its lines: paper, grid, legend on top, room for the last label. */
public final class ChartFrame {

    static {
        // turned labels as text, not as outlines of their letters
        TextUtils.setUseDrawRotatedStringWorkaround(false);
    }

    private ChartFrame() { }

    /** A chart of a plot in the common look; the plot is modified. */
    public static JFreeChart around(XYPlot plot) {
        plot.setBackgroundPaint(ChartStyle.PAPER);
        plot.setDomainGridlinePaint(ChartStyle.GRID);
        plot.setRangeGridlinePaint(ChartStyle.GRID);
        plot.setDomainGridlineStroke(new BasicStroke(0.8f));
        plot.setRangeGridlineStroke(new BasicStroke(0.8f));
        plot.setOutlinePaint(ChartStyle.FAINT);
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        JFreeChart chart = new JFreeChart(null, ChartStyle.FONT, plot, false);
        chart.setBackgroundPaint(ChartStyle.PAPER);
        // room on the right, so that the last label of the horizontal axis is not cut
        chart.setPadding(new RectangleInsets(2, 2, 2, 22));
        LegendTitle legend = new LegendTitle(plot);
        legend.setItemFont(ChartStyle.FONT);
        legend.setItemPaint(ChartStyle.INK);
        legend.setPosition(RectangleEdge.TOP);
        legend.setFrame(BlockBorder.NONE);
        legend.setBackgroundPaint(ChartStyle.PAPER);
        chart.addSubtitle(legend);
        return chart;
    }

    /** A linear axis in the common look. */
    public static NumberAxis axis(String label) {
        return dressed(new NumberAxis(label), ChartStyle.FONT, ChartStyle.INK, ChartStyle.FAINT);
    }

    /** An axis, modified: font of label and numbers, their colour and that of its line. */
    public static <A extends ValueAxis> A dressed(A axis, Font font, Color ink, Color line) {
        axis.setLabelFont(font);
        axis.setTickLabelFont(font);
        axis.setLabelPaint(ink);
        axis.setTickLabelPaint(ink);
        axis.setAxisLinePaint(line);
        return axis;
    }
}
