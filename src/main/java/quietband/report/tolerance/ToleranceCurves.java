package quietband.report.tolerance;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import quietband.demand.ResidualDemand;
import quietband.model.Design;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.CsvWriter;
import quietband.tolerance.campaign.MonteCarloResult;

/** Percentiles of a Monte Carlo's residual over frequency, as a table and as charts. */
public final class ToleranceCurves {

    private static final double[] SHARES = {0.05, 0.5, 0.95, 0.99};
    private static final String[] NAMES = {"5 %", "median", "95 %", "99 %"};

    private final double[] f;
    private final List<Stack> stacks;
    /** ppb/g, by stack, share and frequency. */
    private final double[][][] values;
    private final List<String> charts;

    /**
     * Works the percentiles out and draws the charts.
     *
     * @param nominal the design that the units were drawn from
     */
    public ToleranceCurves(Design nominal, MonteCarloResult outcome) {
        f = outcome.frequencies();
        stacks = outcome.stacks();
        values = new double[stacks.size()][SHARES.length][f.length];
        for (int s = 0; s < values.length; s++) {
            for (int k = 0; k < SHARES.length; k++) {
                for (int i = 0; i < f.length; i++) {
                    values[s][k][i] = outcome.percentile(s, i, SHARES[k]) * 1e9;
                }
            }
        }
        charts = IntStream.range(0, stacks.size()).mapToObj(s -> chart(nominal, s)).toList();
    }

    /** Writes the table. */
    void writeTo(Writer writer) throws IOException {
        List<String> header = new ArrayList<>(List.of("frequency_hz"));
        for (Stack s : stacks) {
            for (double share : SHARES) {
                header.add(s.key() + "_p" + (share < 0.095 ? "0" : "") + Math.round(100 * share) + "_ppb_per_g");
            }
        }
        CsvWriter table = new CsvWriter(writer, header);
        for (int i = 0; i < f.length; i++) {
            table.cell(f[i]);
            for (double[][] stack : values) {
                for (double[] share : stack) {
                    table.cell(share[i]);
                }
            }
            table.end();
        }
    }

    /** The charts in SVG, stack by stack. */
    List<String> charts() {
        return charts;
    }

    private String chart(Design nominal, int s) {
        Stack stack = stacks.get(s);
        List<ChartLine> lines = new ArrayList<>();
        for (int k = SHARES.length - 1; k >= 0; k--) {
            lines.add(new ChartLine(NAMES[k], f, values[s][k], SHARES[k] == 0.5 ? ChartStyle.of(Stack.COMBINED)
                : ChartStyle.number(SHARES.length - 1 - k)));
        }
        ResidualDemand demand = new ResidualDemand(nominal);
        if (demand.asked()) {
            double[] y = new double[f.length];
            for (int i = 0; i < f.length; i++) {
                y[i] = 1e9 * demand.limit(ResidualDemand.VECTOR, f[i]);
            }
            lines.add(new ChartLine("limit", f, y, ChartStyle.LIMIT));
        }
        Requirement r = nominal.requirement();
        return new FrequencyChart("band-" + stack.key(), "Residual of the units, " + stack.key(), stack.key() + ", ppb/g",
            r.fromHz(), r.toHz(), FrequencyChart.Scale.decades(lines, 4), lines).svg();
    }
}
