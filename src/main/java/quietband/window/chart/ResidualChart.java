package quietband.window.chart;

import java.awt.BasicStroke;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Map;
import org.jfree.chart.ChartPanel;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import quietband.demand.ResidualPoint;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.report.chart.ChartStyle;
import quietband.report.file.QuantityText;
import quietband.response.ResidualCurves;
import quietband.window.work.BackgroundFigures;
import quietband.window.work.DesignView;

/** The residual of every stack against the limit over frequency, with the curve before the last change as a ghost. */
public final class ResidualChart {

    private static final double PPB = 1e9;

    private final BufferedPicture drawn = new BufferedPicture();
    private final ChartPanel panel;
    private final ChartCursor reading;
    private Theme theme;
    private DesignView view;
    private BackgroundFigures figures;
    private Map<String, ResidualCurves> others = Map.of();
    private int axis;
    private double low = Double.NaN;
    private double high = Double.NaN;

    public ResidualChart(Theme theme) {
        this.theme = theme;
        panel = new Panel(drawn);
        panel.setName("residual");
        panel.setFocusable(false);
        panel.setMouseZoomable(false);
        panel.setLayout(null);
        reading = new ChartCursor(theme);
        panel.add(reading);
        MouseAdapter mouse = new MouseAdapter() {
            @Override
            public void mouseMoved(MouseEvent e) {
                reading.mouse(e.getX());
            }

            @Override
            public void mouseExited(MouseEvent e) {
                reading.gone();
            }
        };
        panel.addMouseListener(mouse);
        panel.addMouseMotionListener(mouse);
        panel.getAccessibleContext().setAccessibleName("Residual sensitivity over frequency");
    }

    /** The widget. */
    public ChartPanel panel() {
        return panel;
    }

    /** What the curves are at one frequency. */
    public ChartCursor reading() {
        return reading;
    }

    /** Moves the reading by points; it starts at the worst point. */
    public void read(int points) {
        if (view == null) {
            return;
        }
        double middle = Math.sqrt(view.model().design().requirement().fromHz() * view.model().design().requirement().toHz());
        reading.move(points, figures == null ? middle : worst(figures).frequencyHz());
    }

    public void theme(Theme changed) {
        theme = changed;
        reading.theme(changed);
        redraw();
    }

    /** Shows an axis: index 0 to 2, or 3 for the vector. */
    public void axis(int index) {
        axis = index;
        low = Double.NaN;
        redraw();
    }

    public int axis() {
        return axis;
    }

    public void show(DesignView next) {
        view = next;
        redraw();
    }

    public void show(BackgroundFigures next) {
        boolean marker = figures == null || !worst(figures).equals(worst(next));
        figures = next;
        if (marker) {
            redraw();
        }
    }

    /** Curves of other variants, by their name, to compare with. */
    public void compare(Map<String, ResidualCurves> curves) {
        if (!others.equals(curves)) {
            others = curves;
            redraw();
        }
    }

    private static ResidualPoint worst(BackgroundFigures f) {
        return f.assessment().verdict(f.assessment().fullest()).worst();
    }

    private void redraw() {
        if (view != null) {
            drawn.outdated();
            panel.setChart(chart());
            reading.show(view, axis);
        }
    }

    /** Draws it into a rectangle, for a file. */
    public void draw(Graphics2D g, Rectangle2D area) {
        JFreeChart chart = layout((int) area.getWidth(), chart());
        chart.setBackgroundPaint(theme.paper());
        chart.draw(g, area);
    }

    private JFreeChart chart() {
        ResidualCurves c = view.curves();
        ThemedChart lines = new ThemedChart(theme);
        Stack full = c.stacks().get(c.stacks().size() - 1);
        view.ghost().filter(g -> g.stacks().contains(full)).ifPresent(g -> lines.line(g.frequencyHz(),
            ppb(g.residualPerG()[g.stacks().indexOf(full)][axis]), theme.ghost(), new BasicStroke(theme.px(3))));
        int n = 0;
        List<double[]> drawn = new ArrayList<>();
        for (ResidualCurves o : others.values()) {
            drawn.add(ppb(o.residualPerG()[o.stacks().size() - 1][axis]));
            lines.line(o.frequencyHz(), drawn.get(n), theme.other(n), theme.stroke(ChartStyle.number(3 + n++)));
        }
        for (int s = 0; s < c.stacks().size(); s++) {
            Stack stack = c.stacks().get(s);
            drawn.add(ppb(c.residualPerG()[s][axis]));
            lines.line(c.frequencyHz(), drawn.get(n + s), theme.of(stack), theme.stroke(ChartStyle.of(stack)));
        }
        if (c.limited()) {
            drawn.add(ppb(c.limitPerG()[axis]));
            lines.line(c.frequencyHz(), drawn.get(drawn.size() - 1), theme.limit(), theme.stroke(ChartStyle.LIMIT));
        }
        range(drawn);
        Requirement band = view.model().design().requirement();
        JFreeChart chart = lines.chart(lines.decades("frequency, Hz", band.fromHz(), band.toHz()),
            lines.decades("residual, ppb/g", low, high));
        chart.setBackgroundPaint(theme.ground());
        marks(lines, chart, c);
        return layout(panel.getWidth(), chart);
    }

    private static double[] ppb(double[] perG) {
        return Arrays.stream(perG).map(y -> Double.isInfinite(y) ? Double.NaN : Math.max(y * PPB, 1e-12)).toArray();
    }

    /** Decades that hold the curves; kept while they still do and are not mostly empty, so that the picture does not jump. */
    private void range(List<double[]> lines) {
        DoubleSummaryStatistics drawn = lines.stream().flatMapToDouble(Arrays::stream).filter(v -> !Double.isNaN(v)).summaryStatistics();
        double top = drawn.getMax() > 0 ? drawn.getMax() * 1.15 : 1;
        double bottom = Math.max(Math.min(drawn.getMin(), top / 30) / 1.1, top / 1e4);
        boolean fits = top <= high && bottom >= low && high / top < 8 && bottom / low < 20;
        if (!fits) {
            high = top;
            low = bottom;
        }
    }

    private JFreeChart layout(int width, JFreeChart chart) {
        BandLayout gutter = BandLayout.of(theme, Math.max(width, 1));
        AxisSpace space = new AxisSpace();
        space.setLeft(gutter.left());
        chart.getXYPlot().setFixedRangeAxisSpace(space);
        chart.setPadding(new RectangleInsets(theme.px(6), 0, theme.px(2), gutter.right()));
        return chart;
    }

    private void marks(ThemedChart lines, JFreeChart chart, ResidualCurves c) {
        double from = c.frequencyHz()[0];
        double to = c.frequencyHz()[c.frequencyHz().length - 1];
        if (c.limited() && Double.isFinite(c.limitPerG()[axis][0])) {
            lines.note(chart, " limit", from * 1.02, c.limitPerG()[axis][0] * PPB, theme.limit(), TextAnchor.BOTTOM_LEFT);
        }
        names(lines, chart, to);
        if (figures == null || figures.view().model() != view.model()) {
            return;
        }
        ResidualPoint w = worst(figures);
        boolean here = w.axis().equals("vector") ? axis == ResidualCurves.VECTOR : "xyz".indexOf(w.axis()) == axis;
        if (here) {
            double y = w.residualPerG() * PPB;
            boolean right = w.frequencyHz() < Math.sqrt(from * to) * 4;
            boolean brief = panel.getWidth() > 0 && panel.getWidth() < theme.px(640);
            String words = brief ? QuantityText.hz(w.frequencyHz()) : "worst " + QuantityText.hz(w.frequencyHz()) + ", "
                + QuantityText.ppb(w.residualPerG())
                + " ppb/g";
            double above = y < high / 1.6 ? 1.12 : 0.88;
            lines.note(chart, right ? "  " + words : words + "  ", w.frequencyHz(), y * above,
                w.marginDb() < 0 ? theme.bad() : theme.ink(), above > 1 ? right ? TextAnchor.BOTTOM_LEFT : TextAnchor.BOTTOM_RIGHT
                : right ? TextAnchor.TOP_LEFT : TextAnchor.TOP_RIGHT);
            chart.getXYPlot().addAnnotation(new Ring(w.frequencyHz(), y, theme));
        }
    }

    /** What the lines are that the strip does not name, in the upper right corner. */
    private void names(ThemedChart lines, JFreeChart chart, double to) {
        double y = high / 1.08;
        double step = StrictMath.pow(high / low, 0.075);
        if (view.ghost().isPresent()) {
            lines.note(chart, "\u2501 before ", to, y, theme.ghost(), TextAnchor.TOP_RIGHT);
            y /= step;
        }
        int n = 0;
        for (String name : others.keySet()) {
            lines.note(chart, "\u2504 " + name + " ", to, y, theme.other(n++), TextAnchor.TOP_RIGHT);
            y /= step;
        }
    }

    /** The chart on the screen, without the toolkit's own buffer, whose transparency costs time. */
    private static final class Panel extends ChartPanel {

        private static final long serialVersionUID = 1;
        private final transient BufferedPicture drawn;

        Panel(BufferedPicture drawn) {
            super(null, 600, 300, 80, 60, 6000, 4000, false, false, false, false, false, false);
            this.drawn = drawn;
        }

        @Override
        public void paintComponent(Graphics g) {
            if (getChart() != null) {
                drawn.paint(g, this, g2 -> getChart().draw(g2, new Rectangle2D.Double(0, 0, getWidth(), getHeight())));
            }
        }
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
