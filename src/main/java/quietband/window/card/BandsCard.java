package quietband.window.card;

import java.awt.Font;
import java.awt.Graphics2D;
import java.util.Arrays;
import java.util.stream.IntStream;
import quietband.demand.ResidualDemand;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.report.chart.ChartStyle;
import quietband.report.file.NumberFormat;
import quietband.window.chart.Theme;
import quietband.window.chart.ThemedChart;
import quietband.window.work.MonteCarloProgress;

/** Residual of the worst axis over the units: 5, 50, 95 and 99 % of them stay below. */
public final class BandsCard extends MonteCarloCard {

    private static final long serialVersionUID = 1;
    private static final double PPB = 1e9;
    private static final double[] SHARES = {0.05, 0.50, 0.95, 0.99};

    public BandsCard(Theme theme) {
        super("Residual over the units, ppb/g", "Bands", theme);
    }

    @Override
    String words(MonteCarloProgress s) {
        double[] f = s.outcome().frequencies();
        int full = s.outcome().stacks().size() - 1;
        double most = IntStream.range(0, f.length).mapToDouble(i -> s.outcome().percentile(full, i, 0.95)).max().orElse(0);
        return NumberFormat.text("95 %% of the units stay below %.4g ppb/g at every point", most * PPB);
    }

    @Override
    void draw(Graphics2D g, MonteCarloProgress s, int width, int height) {
        double[] f = s.outcome().frequencies();
        int full = s.outcome().stacks().size() - 1;
        ThemedChart chart = new ThemedChart(theme());
        for (double share : SHARES) {
            double[] y = IntStream.range(0, f.length)
                .mapToDouble(i -> Math.max(1e-12, s.outcome().percentile(full, i, share) * PPB)).toArray();
            chart.line(f, y, share == 0.5 ? theme().ink() : theme().of(Stack.CANCELLED),
                theme().stroke(share == 0.5 ? ChartStyle.of(Stack.COMBINED) : share == 0.99 ? ChartStyle.of(Stack.CANCELLED)
                : ChartStyle.CORRECTION));
        }
        ResidualDemand demand = new ResidualDemand(s.plan().nominal());
        if (demand.asked()) {
            double[] line = Arrays.stream(f).map(x -> demand.limit(ResidualDemand.VECTOR, x) * PPB)
                .map(least -> Double.isInfinite(least) ? Double.NaN : least).toArray();
            chart.line(f, line, theme().limit(), theme().stroke(ChartStyle.LIMIT));
        }
        Requirement band = s.plan().nominal().requirement();
        double top = Math.max(1e-9, chart.most() * 1.2);
        chart.draw(g, chart.decades(null, band.fromHz(), band.toHz()), chart.decades(null, Math.max(chart.least() / 1.2, top / 1e4), top),
            0, 0, width, height - theme().px(15));
        text(g, "5, 50 (bold), 95, 99 % stay below", 0, height - theme().px(2), theme().faint(), Font.PLAIN);
    }
}
