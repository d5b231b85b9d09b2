package quietband.report.chart;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.DefaultXYDataset;
import quietband.report.svg.Picture;
import quietband.report.svg.Svg;

/**
 * Lines over a logarithmic frequency axis.
 *
 * @param name  of the file without its ending; letters, digits and hyphens
 * @param title what it shows, in words
 * @param unit  label of the vertical axis
 * @param fromHz left end
 * @param toHz   right end
 * @param scale  of the vertical axis
 * @param lines  drawn in this order, the last on top
 * @param over   label of the horizontal axis
 */
public record FrequencyChart(String name, String title, String unit, double fromHz, double toHz, Scale scale,
                      List<ChartLine> lines, String over) implements Picture {

    /** Size in px; a page scales it. */
    static final int WIDTH = 760;
    /** Size in px; a page scales it. */
    static final int HEIGHT = 360;
    /** A deviation in px that a picture does not show, not even enlarged some times. */
    private static final double UNSEEN = 0.05;

    public FrequencyChart {
        lines = List.copyOf(lines);
    }

    /** Over the frequency of vibration. */
    public FrequencyChart(String name, String title, String unit, double fromHz, double toHz, Scale scale, List<ChartLine> lines) {
        this(name, title, unit, fromHz, toHz, scale, lines, "frequency, Hz");
    }

    /**
     * The vertical axis.
     *
     * @param logarithmic decades, else even steps
     * @param from        lower end
     * @param to          upper end
     */
    public record Scale(boolean logarithmic, double from, double to) {

        /** Where a value stands between the lower end (0) and the upper (1). */
        double share(double value) {
            return logarithmic ? StrictMath.log(value / from) / StrictMath.log(to / from) : (value - from) / (to - from);
        }

        /** Decades that hold every line, at most a number of decades down from the top. */
        public static Scale decades(List<ChartLine> lines, double most) {
            double top = lines.stream().mapToDouble(ChartLine::top).max().orElse(1);
            double bottom = lines.stream().mapToDouble(l -> l.bottom(true)).min().orElse(0.1);
            if (!(top > 0) || !Double.isFinite(bottom)) {
                return new Scale(true, 0.1, 1);
            }
            double high = StrictMath.log10(top) + 0.05;
            double low = Math.max(StrictMath.log10(bottom) - 0.05, high - most);
            return new Scale(true, StrictMath.pow(10, Math.min(low, high - 0.5)), StrictMath.pow(10, high));
        }

        /** Decades as above; an even scale around lines that stay within a factor of three. */
        public static Scale fitting(List<ChartLine> lines, double most) {
            double top = lines.stream().mapToDouble(ChartLine::top).max().orElse(1);
            double bottom = lines.stream().mapToDouble(l -> l.bottom(true)).min().orElse(0.1);
            if (!(top > 0) || !Double.isFinite(bottom) || top > 3 * bottom) {
                return decades(lines, most);
            }
            double room = Math.max(0.15 * (top - bottom), 0.03 * top);
            return new Scale(false, Math.max(0, bottom - room), top + room);
        }

        /** Even steps that hold every line, at most a span down from the top. */
        public static Scale even(List<ChartLine> lines, double step, double most) {
            double top = lines.stream().mapToDouble(ChartLine::top).max().orElse(1);
            double bottom = lines.stream().mapToDouble(l -> l.bottom(false)).min().orElse(0);
            if (!Double.isFinite(top) || !Double.isFinite(bottom)) {
                return new Scale(false, 0, step);
            }
            double high = Math.floor(top / step) * step + step;
            double low = Math.max(Math.ceil(bottom / step) * step - step, high - most);
            return new Scale(false, low, high);
        }
    }

    @Override
    public String svg() {
        return Svg.draw(name, title, WIDTH, HEIGHT, g -> chart().draw(g, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT)));
    }

    private JFreeChart chart() {
        DefaultXYDataset data = new DefaultXYDataset();
        Lines renderer = new Lines();
        renderer.setLegendLine(new Line2D.Double(-17, 0, 17, 0));
        for (int i = 0; i < lines.size(); i++) {
            ChartLine line = lines.get(i).thinned();
            double[] y = Arrays.stream(line.y())
                // what is below the chart's lower end runs along it; what is infinite is left out
                .map(v -> v == Double.POSITIVE_INFINITY ? Double.NaN : Math.max(v, scale.from())).toArray();
            BitSet marks = line.dots() ? new BitSet() : spread(line.x(), i);
            int[] shown = line.dots() ? IntStream.range(0, y.length).toArray() : shown(line.x(), y, marks);
            data.addSeries(i + ":" + line.name(), new double[][] {at(shown, line.x()), at(shown, y)});
            renderer.setSeriesPaint(i, line.look().colour());
            renderer.setSeriesStroke(i, line.look().stroke());
            renderer.setSeriesLinesVisible(i, !line.dots());
            renderer.setSeriesShapesVisible(i, line.look().marker() != null);
            if (line.look().marker() != null) {
                renderer.setSeriesShape(i, line.look().marker());
            }
            renderer.setSeriesVisibleInLegend(i, !line.name().isEmpty());
            if (!line.dots()) {
                renderer.markersAt(i, IntStream.range(0, shown.length).filter(k -> marks.get(shown[k])).collect(BitSet::new,
                    BitSet::set, BitSet::or));
            }
        }
        renderer.setLegendItemLabelGenerator((set, series) -> lines.get(series).name());
        XYPlot plot = new XYPlot(data, new TradeAxis(over, fromHz, toHz), vertical(), renderer);
        return ChartFrame.around(plot);
    }

    /** The points without which the drawn line would look different. */
    private int[] shown(double[] x, double[] y, BitSet marks) {
        double[] across = Arrays.stream(x).map(f -> WIDTH * StrictMath.log(f / fromHz) / StrictMath.log(toHz / fromHz)).toArray();
        double[] up = Arrays.stream(y).map(v -> HEIGHT * scale.share(v)).toArray();
        return LineReducer.kept(across, up, marks, UNSEEN).stream().toArray();
    }

    private static double[] at(int[] places, double[] values) {
        return Arrays.stream(places).mapToDouble(i -> values[i]).toArray();
    }

    private ValueAxis vertical() {
        if (scale.logarithmic()) {
            return new TradeAxis(unit, scale.from(), scale.to());
        }
        NumberAxis axis = ChartFrame.axis(unit);
        axis.setRange(scale.from(), scale.to());
        axis.setNumberFormatOverride(new java.text.DecimalFormat("0.###",
            java.text.DecimalFormatSymbols.getInstance(java.util.Locale.ROOT)));
        return axis;
    }

    /** Points that stand some sixth of the band apart, shifted from line to line so that markers do not cover each other. */
    private BitSet spread(double[] x, int line) {
        BitSet at = new BitSet();
        double width = StrictMath.log(toHz / fromHz) / 6;
        double shift = 0.2 + 0.25 * (line % 4);
        long last = -1;
        for (int i = 0; i < x.length; i++) {
            long sixth = (long) Math.floor(StrictMath.log(x[i] / fromHz) / width - shift);
            if (sixth > last) {
                at.set(i);
            }
            last = Math.max(last, sixth);
        }
        return at;
    }

    /** Each line as one path, with markers at some of its points. */
    private static final class Lines extends XYLineAndShapeRenderer {

        private static final long serialVersionUID = 1;
        private final Map<Integer, BitSet> marked = new HashMap<>();

        Lines() {
            super(true, false);
            setDrawSeriesLineAsPath(true);
        }

        void markersAt(int series, BitSet items) {
            marked.put(series, items);
        }

        @Override
        public boolean getItemShapeVisible(int series, int item) {
            return super.getItemShapeVisible(series, item) && (!marked.containsKey(series) || marked.get(series).get(item));
        }
    }
}
