package quietband.window.card;

import java.awt.Font;
import java.awt.Graphics2D;
import java.util.Optional;
import quietband.demand.ResidualPoint;
import quietband.model.Axis;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.report.chart.ChartStyle;
import quietband.report.file.NumberFormat;
import quietband.window.chart.Theme;
import quietband.window.chart.ThemedChart;
import quietband.window.work.BackgroundFigures;
import quietband.window.work.RoleFigures;

/** Gain and phase of the cancellation's path, errors in, along the worst axis. */
public final class PathCard extends FigureCard {

    private static final long serialVersionUID = 1;

    public PathCard(Theme theme) {
        super("Path: gain above, phase below", "Path", theme);
    }

    private static int axis(BackgroundFigures f) {
        ResidualPoint w = f.assessment().verdict(f.assessment().fullest()).worst();
        return Math.max(0, "xyz".indexOf(w.axis()));
    }

    @Override
    String words(BackgroundFigures f) {
        Optional<RoleFigures.Path> path = f.details().flatMap(RoleFigures::path);
        if (path.isEmpty()) {
            return "no cancellation";
        }
        int last = path.get().frequencyHz().length - 1;
        int axis = axis(f);
        return NumberFormat.text("axis %s, top: %.3f dB, %.2f deg", Axis.ALL.get(axis).letter(),
            path.get().gainDb()[axis][last], path.get().phaseDeg()[axis][last]);
    }

    @Override
    void draw(Graphics2D g, BackgroundFigures f, int width, int height) {
        Optional<RoleFigures.Path> path = f.details().flatMap(RoleFigures::path);
        if (path.isEmpty()) {
            text(g, f.details().isEmpty() ? "" : "No cancellation.", 0, theme().px(16), theme().faint(), Font.PLAIN);
            return;
        }
        RoleFigures.Path p = path.get();
        int axis = axis(f);
        Requirement band = f.assessment().design().requirement();
        double half = (height - theme().px(16)) / 2.0;
        chart(g, band, p.frequencyHz(), p.gainDb()[axis], "dB", 0, width, half);
        chart(g, band, p.frequencyHz(), p.phaseDeg()[axis], "deg", half, width, half);
        fitted(g, words(f), 0, height - theme().px(1), width, theme().faint());
    }

    private void chart(Graphics2D g, Requirement band, double[] f, double[] y, String unit, double top, int width, double height) {
        ThemedChart chart = new ThemedChart(theme()).line(f, y, theme().of(Stack.CANCELLED), theme().stroke(ChartStyle.CORRECTION));
        chart.draw(g, chart.decades(null, band.fromHz(), band.toHz()), chart.even(unit, -200), 0, top, width, height);
    }
}
