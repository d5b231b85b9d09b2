package quietband.window.card;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.report.chart.ChartStyle;
import quietband.report.file.NumberFormat;
import quietband.response.FrequencyTable;
import quietband.window.chart.Theme;
import quietband.window.chart.ThemedChart;
import quietband.window.work.BackgroundFigures;

/** Phase noise at the output on the worst row against its limit, and what sensor and port add to the oscillator at rest. */
public final class NoiseCard extends FigureCard {

    private static final long serialVersionUID = 1;

    public NoiseCard(Theme theme) {
        super("Phase noise, dBc/Hz", "Noise", theme);
    }

    @Override
    String words(BackgroundFigures f) {
        return f.assessment().requirements().stream().filter(r -> r.name().equals("phase_noise"))
            .map(r -> NumberFormat.text("margin %.2f dB", r.marginDb())).findFirst().orElse("no limit stated");
    }

    @Override
    void draw(Graphics2D g, BackgroundFigures f, int width, int height) {
        if (f.details().isEmpty()) {
            return;
        }
        FrequencyTable table = f.details().get().table();
        List<FrequencyTable.Row> rows = table.rows();
        double[] x = rows.stream().mapToDouble(FrequencyTable.Row::frequencyHz).toArray();
        int full = table.stacks().size() - 1;
        ThemedChart chart = new ThemedChart(theme());
        add(chart, x, rows, FrequencyTable.Row::staticNoise, theme().faint(), ChartStyle.of(Stack.BARE));
        if (table.stacks().get(full).corrected()) {
            add(chart, x, rows, r -> r.sensor() + r.tuning(), theme().of(Stack.CANCELLED), ChartStyle.of(Stack.CANCELLED));
        }
        add(chart, x, rows, r -> r.floor()[full] + Arrays.stream(r.vibration()[full]).max().orElse(0), theme().ink(),
            ChartStyle.of(Stack.COMBINED));
        double[] limit = rows.stream().mapToDouble(FrequencyTable.Row::limitDbc).toArray();
        chart.line(x, limit, theme().limit(), theme().stroke(ChartStyle.LIMIT));
        Requirement band = f.assessment().design().requirement();
        chart.draw(g, chart.decades(null, band.fromHz(), band.toHz()), chart.even(null, chart.most() - 120), 0, 0, width,
            height - theme().px(30));
        double y = height - theme().px(16);
        text(g, "\u2501 with vibration", 0, y, theme().ink(), Font.PLAIN);
        text(g, "\u2505 limit", width * 0.55, y, theme().limit(), Font.PLAIN);
        text(g, "\u2508 sensor and port", 0, y + theme().px(15), theme().of(Stack.CANCELLED), Font.PLAIN);
        text(g, "\u2505 static", width * 0.55, y + theme().px(15), theme().faint(), Font.PLAIN);
    }

    private void add(ThemedChart chart, double[] x, List<FrequencyTable.Row> rows, ToDoubleFunction<FrequencyTable.Row> power,
                     Color colour, ChartStyle look) {
        double[] y = rows.stream().mapToDouble(power).map(p -> p > 0 ? 10 * StrictMath.log10(p) : Double.NaN).toArray();
        chart.line(x, y, colour, theme().stroke(look));
    }
}
