package quietband.window;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jfree.chart.ChartPanel;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;
import quietband.model.Stack;
import quietband.report.ChartFrame;
import quietband.report.Look;
import quietband.report.TradeAxis;
import quietband.report.Words;
import quietband.response.ResidualCurves;
import quietband.response.StackVerdict;

/** The residual of every stack against the limit over frequency, with the curve before the last change as a ghost. */
final class ResidualChart {

    private static final double PPB = 1e9;

    private final ChartPanel panel;
    private Theme theme;
    private View view;
    private Figures figures;
    private Map<String, ResidualCurves> others = Map.of();
    private int axis;
    private double low = Double.NaN;
    private double high = Double.NaN;

    ResidualChart(Theme theme) {
        this.theme = theme;
        panel = new ChartPanel(null, 600, 300, 80, 60, 6000, 4000, false, false, false, false, false, false);
        panel.setName("residual");
        panel.setFocusable(false);
        panel.setMouseZoomable(false);
        panel.getAccessibleContext().setAccessibleName("Residual sensitivity over frequency");
    }

    /** The widget. */
    ChartPanel panel() {
        return panel;
    }

    void theme(Theme changed) {
        theme = changed;
        redraw();
    }

    /** @param index 0 to 2, or 3 for the vector */
    void axis(int index) {
        axis = index;
        low = Double.NaN;
        redraw();
    }

    int axis() {
        return axis;
    }

    void show(View next) {
        view = next;
        redraw();
    }

    void show(Figures next) {
        boolean marker = figures == null || !worst(figures).equals(worst(next));
        figures = next;
        if (marker) {
            redraw();
        }
    }

    /** Curves of other variants, by their name, to compare with. */
    void compare(Map<String, ResidualCurves> curves) {
        others = curves;
        redraw();
    }

    private static StackVerdict.Worst worst(Figures f) {
        return f.assessment().verdict(f.assessment().fullest()).worst();
    }

    private void redraw() {
        if (view != null) {
            panel.setChart(chart());
        }
    }

    /** Draws it into a rectangle, for a file. */
    void draw(Graphics2D g, Rectangle2D area) {
        layout((int) area.getWidth(), chart()).draw(g, area);
    }

    private JFreeChart chart() {
        ResidualCurves c = view.curves();
        DefaultXYDataset data = new DefaultXYDataset();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        renderer.setDrawSeriesLineAsPath(true);
        Stack full = c.stacks().get(c.stacks().size() - 1);
        List<double[]> drawn = new ArrayList<>();
        view.ghost().filter(g -> g.stacks().contains(full)).ifPresent(g -> line(data, renderer, "before", g.frequencyHz(),
            g.residualPerG()[g.stacks().indexOf(full)][axis], theme.faint(), new BasicStroke(theme.px(2) * 0.8f)));
        int n = 0;
        for (Map.Entry<String, ResidualCurves> o : others.entrySet()) {
            Look look = Look.number(3 + n++);
            ResidualCurves g = o.getValue();
            line(data, renderer, o.getKey(), g.frequencyHz(), g.residualPerG()[g.stacks().size() - 1][axis], look.colour(),
                theme.stroke(look));
        }
        for (int s = 0; s < c.stacks().size(); s++) {
            Stack stack = c.stacks().get(s);
            drawn.add(line(data, renderer, stack.key(), c.frequencyHz(), c.residualPerG()[s][axis], theme.of(stack),
                theme.stroke(Look.of(stack))));
        }
        if (c.limited()) {
            drawn.add(line(data, renderer, "limit", c.frequencyHz(), c.limitPerG()[axis], theme.limit(), theme.stroke(Look.LIMIT)));
        }
        range(drawn);
        XYPlot plot = new XYPlot(data, dressed(new TradeAxis("frequency, Hz", view.model().design().requirement().fromHz(),
            view.model().design().requirement().toHz())), dressed(new TradeAxis("residual, ppb/g", low, high)), renderer);
        marks(plot, c);
        return layout(panel.getWidth(), coloured(ChartFrame.around(plot)));
    }

    private static double[] line(DefaultXYDataset data, XYLineAndShapeRenderer renderer, String name, double[] x, double[] perG,
                                 Color colour, BasicStroke stroke) {
        double[] y = new double[perG.length];
        for (int i = 0; i < y.length; i++) {
            y[i] = Double.isInfinite(perG[i]) ? Double.NaN : Math.max(perG[i] * PPB, 1e-12);
        }
        int series = data.getSeriesCount();
        data.addSeries(series + name, new double[][] {x, y});
        renderer.setSeriesPaint(series, colour);
        renderer.setSeriesStroke(series, stroke);
        return y;
    }

    /** Decades that hold the curves; kept while they still do and are not mostly empty, so that the picture does not jump. */
    private void range(List<double[]> lines) {
        double top = 0;
        double bottom = Double.POSITIVE_INFINITY;
        for (double[] y : lines) {
            for (double v : y) {
                top = v > top ? v : top;
                bottom = v < bottom ? v : bottom;
            }
        }
        top = top > 0 ? top * 1.15 : 1;
        bottom = Math.max(Math.min(bottom, top / 30) / 1.1, top / 1e4);
        boolean fits = top <= high && bottom >= low && high / top < 8 && bottom / low < 20;
        if (!fits) {
            high = top;
            low = bottom;
        }
    }

    private TradeAxis dressed(TradeAxis a) {
        a.setLabelFont(theme.font(Font.PLAIN, 12));
        a.setTickLabelFont(theme.font(Font.PLAIN, 12));
        a.setLabelPaint(theme.ink());
        a.setTickLabelPaint(theme.ink());
        a.setAxisLinePaint(theme.faint());
        return a;
    }

    private JFreeChart coloured(JFreeChart chart) {
        chart.clearSubtitles();
        chart.setBackgroundPaint(theme.ground());
        XYPlot plot = chart.getXYPlot();
        plot.setBackgroundPaint(theme.paper());
        plot.setDomainGridlinePaint(theme.grid());
        plot.setRangeGridlinePaint(theme.grid());
        plot.setOutlinePaint(theme.faint());
        return chart;
    }

    private JFreeChart layout(int width, JFreeChart chart) {
        Gutter gutter = Gutter.of(theme, Math.max(width, 1));
        AxisSpace space = new AxisSpace();
        space.setLeft(gutter.left());
        chart.getXYPlot().setFixedRangeAxisSpace(space);
        chart.getXYPlot().setInsets(RectangleInsets.ZERO_INSETS);
        chart.setPadding(new RectangleInsets(theme.px(6), 0, theme.px(2), gutter.right()));
        return chart;
    }

    private void marks(XYPlot plot, ResidualCurves c) {
        double from = c.frequencyHz()[0];
        if (c.limited() && Double.isFinite(c.limitPerG()[axis][0])) {
            note(plot, " limit", from * 1.02, c.limitPerG()[axis][0] * PPB, theme.limit(), TextAnchor.BOTTOM_LEFT);
        }
        if (figures == null || figures.view().bench().model() != view.bench().model()) {
            return;
        }
        StackVerdict.Worst w = worst(figures);
        boolean here = w.axis().equals("vector") ? axis == ResidualCurves.VECTOR : "xyz".indexOf(w.axis()) == axis;
        if (here) {
            double y = w.residualPerG() * PPB;
            plot.addAnnotation(new Ring(w.frequencyHz(), y, theme));
            boolean right = w.frequencyHz() < Math.sqrt(from * c.frequencyHz()[c.frequencyHz().length - 1]) * 4;
            String words = (right ? "   " : "") + "worst: " + Words.hz(w.frequencyHz()) + ", " + Words.ppb(w.residualPerG()) + " ppb/g"
                + (right ? "" : "   ");
            note(plot, words, w.frequencyHz(), y, w.marginDb() < 0 ? theme.bad() : theme.ink(),
                right ? TextAnchor.BOTTOM_LEFT : TextAnchor.BOTTOM_RIGHT);
        }
    }

    private void note(XYPlot plot, String text, double x, double y, Color colour, TextAnchor anchor) {
        XYTextAnnotation a = new XYTextAnnotation(text, x, y);
        a.setFont(theme.font(Font.BOLD, 12));
        a.setPaint(colour);
        a.setTextAnchor(anchor);
        plot.addAnnotation(a);
    }

    /** A ring around a point, of one size whatever the axes. */
    private static final class Ring extends org.jfree.chart.annotations.AbstractXYAnnotation {

        private static final long serialVersionUID = 1;
        private final double x;
        private final double y;
        private final transient Theme theme;

        Ring(double x, double y, Theme theme) {
            this.x = x;
            this.y = y;
            this.theme = theme;
        }

        @Override
        public void draw(Graphics2D g, XYPlot plot, Rectangle2D area, org.jfree.chart.axis.ValueAxis domain,
                         org.jfree.chart.axis.ValueAxis range, int index, org.jfree.chart.plot.PlotRenderingInfo info) {
            double px = domain.valueToJava2D(x, area, plot.getDomainAxisEdge());
            double py = range.valueToJava2D(y, area, plot.getRangeAxisEdge());
            double r = theme.px(6);
            g.setColor(theme.ink());
            g.setStroke(new BasicStroke(theme.px(2)));
            g.draw(new Ellipse2D.Double(px - r, py - r, 2 * r, 2 * r));
        }
    }
}
