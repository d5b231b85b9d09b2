package quietband.report.chart;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.DefaultXYDataset;
import quietband.report.svg.Picture;
import quietband.report.svg.Svg;

/**
 * Lines over time, or over another quantity on an even scale.
 *
 * @param name   of the file without its ending; letters, digits and hyphens
 * @param title  what it shows, in words
 * @param across label of the horizontal axis
 * @param unit   label of the vertical axis
 * @param lines  drawn in this order
 */
public record TimeChart(String name, String title, String across, String unit, List<ChartLine> lines) implements Picture {

    private static final double LEVEL = 1e-4;
    private static final double ROOM = 0.05;

    public TimeChart {
        lines = List.copyOf(lines);
    }

    /** Lines over time in s. */
    public TimeChart(String name, String title, String unit, List<ChartLine> lines) {
        this(name, title, "time, s", unit, lines);
    }

    @Override
    public String svg() {
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
        NumberAxis up = axis(unit);
        double low = lines.stream().mapToDouble(l -> l.bottom(false)).min().orElse(0);
        double high = lines.stream().mapToDouble(ChartLine::top).max().orElse(0);
        if (Double.isFinite(high) && high != 0 && high - low < LEVEL * Math.abs(high)) {
            // a level line: room for labels that differ
            up.setRange(high - ROOM * Math.abs(high), high + ROOM * Math.abs(high));
        }
        return ChartFrame.around(new XYPlot(data, axis(across), up, renderer));
    }

    private static NumberAxis axis(String label) {
        NumberAxis axis = ChartFrame.axis(label);
        axis.setAutoRangeIncludesZero(false);
        return axis;
    }
}
