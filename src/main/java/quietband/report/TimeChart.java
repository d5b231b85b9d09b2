package quietband.report;

import java.awt.BasicStroke;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * Lines over time.
 *
 * @param name  of the file without its ending; letters, digits and hyphens
 * @param title what it shows, in words
 * @param unit  label of the vertical axis
 * @param lines x in s; drawn in this order
 */
record TimeChart(String name, String title, String unit, List<ChartLine> lines) {

    TimeChart {
        lines = List.copyOf(lines);
    }

    /** The picture. */
    String svg() {
        return Svg.draw(name, title, FrequencyChart.WIDTH, FrequencyChart.HEIGHT, g -> chart().draw(g,
            new Rectangle2D.Double(0, 0, FrequencyChart.WIDTH, FrequencyChart.HEIGHT)));
    }

    private JFreeChart chart() {
        DefaultXYDataset data = new DefaultXYDataset();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        renderer.setDrawSeriesLineAsPath(true);
        renderer.setLegendLine(new Line2D.Double(-17, 0, 17, 0));
        for (int i = 0; i < lines.size(); i++) {
            ChartLine line = lines.get(i).thinned();
            data.addSeries(i + ":" + line.name(), new double[][] {line.x(), line.y()});
            renderer.setSeriesPaint(i, line.look().colour());
            renderer.setSeriesStroke(i, line.look().stroke());
        }
        renderer.setLegendItemLabelGenerator((set, series) -> lines.get(series).name());
        XYPlot plot = new XYPlot(data, axis("time, s"), axis(unit), renderer);
        plot.setBackgroundPaint(Look.PAPER);
        plot.setDomainGridlinePaint(Look.GRID);
        plot.setRangeGridlinePaint(Look.GRID);
        plot.setDomainGridlineStroke(new BasicStroke(0.8f));
        plot.setRangeGridlineStroke(new BasicStroke(0.8f));
        plot.setOutlinePaint(Look.FAINT);
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        JFreeChart chart = new JFreeChart(null, Look.FONT, plot, false);
        chart.setBackgroundPaint(Look.PAPER);
        chart.setPadding(new RectangleInsets(2, 2, 2, 22));
        LegendTitle legend = new LegendTitle(plot);
        legend.setItemFont(Look.FONT);
        legend.setItemPaint(Look.INK);
        legend.setPosition(RectangleEdge.TOP);
        legend.setFrame(BlockBorder.NONE);
        legend.setBackgroundPaint(Look.PAPER);
        chart.addSubtitle(legend);
        return chart;
    }

    private static NumberAxis axis(String label) {
        NumberAxis axis = new NumberAxis(label);
        axis.setAutoRangeIncludesZero(false);
        axis.setLabelFont(Look.FONT);
        axis.setTickLabelFont(Look.FONT);
        axis.setLabelPaint(Look.INK);
        axis.setTickLabelPaint(Look.INK);
        axis.setAxisLinePaint(Look.FAINT);
        return axis;
    }
}
