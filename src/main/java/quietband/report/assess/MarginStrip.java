package quietband.report.assess;

import java.util.ArrayList;
import java.util.List;
import quietband.demand.ResidualDemand;
import quietband.model.Design;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.TradeAxis;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.response.FrequencyTable;
import quietband.response.verdict.StackVerdict;

/**
 * One row of the band strip: the margin of a stack over the band as two areas in a box 1000 wide and 40 high, above
 * the middle where it meets the limit and below where it does not, full height at 20 dB.
 *
 * @param name  of the stack
 * @param meets points of the upper area, as SVG writes them
 * @param fails points of the lower area
 * @param worst least margin and where, in words
 * @param holds whether it meets the limit everywhere
 */
public record MarginStrip(String name, String meets, String fails, String worst, boolean holds) {

    private static final double FULL_DB = 20;
    private static final int WIDTH = 1000;
    private static final int MIDDLE = 20;

    /** A label under the strips: its text and its place in percent from the left. */
    public record Tick(String text, String percent) {

        /** The class of its style: the outermost labels stay within the strip. */
        public String place() {
            return percent.equals("0.00") ? "begin" : percent.equals("100.00") ? "last" : "";
        }
    }

    /** The rows, one per stack that has a limit. */
    static List<MarginStrip> of(Design design, FrequencyTable curves, List<StackVerdict> verdicts) {
        ResidualDemand demand = new ResidualDemand(design);
        return verdicts.stream().filter(StackVerdict::asked).map(v -> row(design, curves, v, demand)).toList();
    }

    private static MarginStrip row(Design design, FrequencyTable curves, StackVerdict v, ResidualDemand demand) {
        int s = curves.stacks().indexOf(v.stack());
        List<FrequencyTable.Row> rows = curves.rows();
        double[] x = new double[rows.size()];
        double[] margin = new double[rows.size()];
        for (int i = 0; i < x.length; i++) {
            FrequencyTable.Row r = rows.get(i);
            x[i] = place(design, r.frequencyHz());
            margin[i] = shown(-demand.overDb(r.frequencyHz(), ResidualDemand.squares(r.residualPerG()[s])));
        }
        ChartLine line = new ChartLine("", x, margin, ChartStyle.LIMIT).thinned();
        boolean holds = v.gaps().isEmpty();
        String worst = NumberFormat.text("%s %s at %s", QuantityText.db(Math.abs(v.worst().marginDb())),
            v.worst().marginDb() < 0 ? "over" : "spare", QuantityText.hz(v.worst().frequencyHz()));
        return new MarginStrip(v.stack().key(), area(line, true), area(line, false), worst, holds);
    }

    /** A margin in dB as far as a strip shows it. */
    public static double shown(double marginDb) {
        return Math.max(-FULL_DB, Math.min(FULL_DB, marginDb));
    }

    public static double place(Design design, double f) {
        double from = design.requirement().fromHz();
        return WIDTH * StrictMath.log(f / from) / StrictMath.log(design.requirement().toHz() / from);
    }

    /** The area between the middle and the margin where it is positive (or negative), with its zero crossings. */
    public static String area(ChartLine line, boolean above) {
        StringBuilder points = new StringBuilder("0,").append(MIDDLE);
        double[] m = line.y();
        double[] x = line.x();
        for (int i = 0; i < x.length; i++) {
            if (i > 0 && (m[i - 1] > 0) != (m[i] > 0)) {
                double share = m[i - 1] / (m[i - 1] - m[i]);
                point(points, x[i - 1] + share * (x[i] - x[i - 1]), 0);
            }
            point(points, x[i], above ? Math.max(0, m[i]) : Math.min(0, m[i]));
        }
        return points.append(' ').append(WIDTH).append(',').append(MIDDLE).toString();
    }

    private static void point(StringBuilder points, double x, double marginDb) {
        NumberFormat.tenths(points.append(' '), x);
        NumberFormat.tenths(points.append(','), MIDDLE * (1 - marginDb / FULL_DB));
    }

    /** The labels 10, 20, 50 ... that fall into the band. */
    public static List<Tick> ticks(Design design) {
        List<Tick> ticks = new ArrayList<>();
        double from = design.requirement().fromHz();
        double to = design.requirement().toHz();
        for (int e = (int) Math.floor(StrictMath.log10(from)); e <= StrictMath.log10(to); e++) {
            for (int digit : new int[] {1, 2, 5}) {
                double f = digit * StrictMath.pow(10, e);
                if (f >= from * (1 - 1e-9) && f <= to * (1 + 1e-9)) {
                    ticks.add(new Tick(TradeAxis.label(f),
                        NumberFormat.text("%.2f", place(design, f) / 10)));
                }
            }
        }
        return ticks;
    }
}
