package quietband.window.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;
import quietband.report.chart.ChartFrame;
import quietband.report.chart.TradeAxis;

/** Lines over frequency in the colours and sizes of a theme: the large chart and the small ones on cards. */
public final class ThemedChart {

    private final Theme theme;
    private final DefaultXYDataset data = new DefaultXYDataset();
    private final XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
    private double least = Double.POSITIVE_INFINITY;
    private double most = Double.NEGATIVE_INFINITY;

    public ThemedChart(Theme theme) {
        this.theme = theme;
        renderer.setDrawSeriesLineAsPath(true);
    }

    /** Adds a line, on top of those before it; values that are not finite are left out. The arrays are not copied. */
    public ThemedChart line(double[] x, double[] y, Color colour, BasicStroke stroke) {
        int series = data.getSeriesCount();
        data.addSeries(series, new double[][] {x, y});
        renderer.setSeriesPaint(series, colour);
        renderer.setSeriesStroke(series, stroke);
        for (double v : y) {
            if (Double.isFinite(v)) {
                least = Math.min(least, v);
                most = Math.max(most, v);
            }
        }
        return this;
    }

    /** The least value of all lines so far; infinite when there is none. */
    public double least() {
        return least;
    }

    /** The largest value of all lines so far; minus infinity when there is none. */
    public double most() {
        return most;
    }

    /** A logarithmic axis. */
    public TradeAxis decades(String label, double from, double to) {
        return dressed(new TradeAxis(label, from, to));
    }

    /** An axis of even steps that holds the lines so far, not below a lower end. */
    public NumberAxis even(String label, double notBelow) {
        NumberAxis axis = dressed(ChartFrame.axis(label));
        double low = Math.max(notBelow, Double.isFinite(least) ? least : 0);
        double high = Double.isFinite(most) ? most : 1;
        double room = Math.max((high - low) * 0.06, 0.02);
        axis.setRange(low - room, Math.max(high, low) + room);
        return axis;
    }

    private <A extends ValueAxis> A dressed(A a) {
        return ChartFrame.dressed(a, theme.font(Font.PLAIN, 12), theme.ink(), theme.faint());
    }

    /** The chart without legend. */
    JFreeChart chart(ValueAxis x, ValueAxis y) {
        XYPlot plot = new XYPlot(data, x, y, renderer);
        JFreeChart chart = ChartFrame.around(plot);
        chart.clearSubtitles();
        chart.setBackgroundPaint(null);
        plot.setBackgroundPaint(theme.paper());
        plot.setDomainGridlinePaint(theme.grid());
        plot.setRangeGridlinePaint(theme.grid());
        plot.setOutlinePaint(theme.faint());
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        plot.setInsets(RectangleInsets.ZERO_INSETS);
        return chart;
    }

    /** Draws a small chart at a place. */
    public void draw(Graphics2D g, ValueAxis x, ValueAxis y, double left, double top, double width, double height) {
        JFreeChart chart = chart(x, y);
        chart.setPadding(new RectangleInsets(theme.px(2), 0, 0, theme.px(17)));
        chart.draw(g, new Rectangle2D.Double(left, top, Math.max(1, width), Math.max(1, height)));
    }

    /** Writes beside a point of a chart. */
    void note(JFreeChart chart, String text, double x, double y, Color colour, TextAnchor anchor) {
        XYTextAnnotation a = new XYTextAnnotation(text, x, y);
        a.setFont(theme.font(Font.BOLD, 12));
        a.setPaint(colour);
        a.setTextAnchor(anchor);
        a.setBackgroundPaint(theme.veil());
        chart.getXYPlot().addAnnotation(a);
    }
}
