package quietband.window.card;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.util.List;
import java.util.Optional;
import quietband.filter.allowed.ErrorBounds;
import quietband.model.Axis;
import quietband.report.file.NumberFormat;
import quietband.window.chart.Theme;
import quietband.window.work.BackgroundFigures;
import quietband.window.work.RoleFigures;

/** How far each error of the cancellation's path may go, one at a time, until the residual reaches its limit. */
public final class AllowedErrorCard extends FigureCard {

    private static final long serialVersionUID = 1;
    private static final double PERCENT = 100;
    private static final double DEGREES = 180 / Math.PI;
    private static final double MICRO = 1e6;

    public AllowedErrorCard(Theme theme) {
        super("Allowed errors, one at a time", "Allowed", theme);
    }

    private static Optional<ErrorBounds> room(BackgroundFigures f) {
        return f.details().flatMap(RoleFigures::room);
    }

    @Override
    String words(BackgroundFigures f) {
        return room(f).map(r -> "gain, %: " + words(r.gain(), PERCENT) + "; phase, deg: " + words(r.phase(), DEGREES) + "; delay, us: "
            + words(r.delay(), MICRO)).orElse("no cancellation or no limit");
    }

    private static String words(List<ErrorBounds.Span> spans, double unit) {
        StringBuilder text = new StringBuilder();
        for (Axis a : Axis.ALL) {
            ErrorBounds.Span s = spans.get(a.ordinal());
            text.append(' ').append(a.letter()).append(' ')
                .append(s.open() ? signed(s.low() * unit) + " to " + signed(s.high() * unit) : "none");
        }
        return text.toString().strip();
    }

    private static String signed(double v) {
        return Double.isInfinite(v) ? "any" : (v < 0 ? "-" : "+") + NumberFormat.brief(Math.abs(v), 3);
    }

    @Override
    void draw(Graphics2D g, BackgroundFigures f, int width, int height) {
        Optional<ErrorBounds> room = room(f);
        if (room.isEmpty()) {
            text(g, f.details().isEmpty() ? "" : "No cancellation, or no limit stated.", 0, theme().px(16), theme().faint(), Font.PLAIN);
            return;
        }
        double row = height / 8.2;
        double first = theme().px(70);
        double column = (width - first) / 3;
        for (Axis a : Axis.ALL) {
            textLeftOf(g, a.letter(), first + (a.ordinal() + 1) * column, row * 0.75, theme().faint(), Font.PLAIN);
        }
        rows(g, "gain, %", room.get().gain(), PERCENT, 1.75 * row, row, column, first);
        rows(g, "phase, deg", room.get().phase(), DEGREES, 3.75 * row, row, column, first);
        rows(g, "delay, us", room.get().delay(), MICRO, 5.75 * row, row, column, first);
        fitted(g, "the limit is reached there, all else as written", 0, height - theme().px(1), width, theme().faint());
    }

    private void rows(Graphics2D g, String name, List<ErrorBounds.Span> spans, double unit, double y, double row, double column,
                      double first) {
        fitted(g, name, 0, y, first - theme().px(4), theme().ink());
        for (int i = 0; i < spans.size(); i++) {
            ErrorBounds.Span s = spans.get(i);
            Color colour = s.kept() ? theme().ink() : theme().bad();
            double right = first + (i + 1) * column;
            textLeftOf(g, s.open() ? signed(s.low() * unit) : "none", right, y, colour, Font.PLAIN);
            textLeftOf(g, s.open() ? signed(s.high() * unit) : "", right, y + row, colour, Font.PLAIN);
        }
    }
}
