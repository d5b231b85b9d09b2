package quietband.study.filter;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quietband.filter.allowed.AllowedErrors;
import quietband.filter.allowed.AllowedErrors.Kind;
import quietband.filter.allowed.AllowedErrors.Span;
import quietband.filter.design.FilterFacts;
import quietband.model.Axis;

/**
 * Errors of each sensor's path that the limit allows, each alone.
 *
 * @param rows   on the table's frequencies
 * @param least  where each takes least over the band; empty without a limit
 * @param region gain and phase error together, where gain takes least; empty without a limit
 */
public record AllowedTable(List<Row> rows, List<Tightest> least, Optional<Region> region) {

    private static final int REGION = 61;

    public AllowedTable {
        rows = List.copyOf(rows);
        least = List.copyOf(least);
    }

    /** Each error alone to the limit, nearest to none: gain as a ratio, phase in rad, delay in s; infinite where nothing limits it. */
    public record Row(double frequencyHz, Axis axis, double gain, double phase, double delay) { }

    /** Where an error takes least, from where to where it may be there, and what the model has. */
    public record Tightest(AllowedErrors.Least least, AllowedErrors.Span span, double now) { }

    /**
     * Largest residual over its limit for two errors together.
     *
     * @param gain  first and last of the columns, a ratio (not copied, do not modify)
     * @param phase first and last of the rows, rad (not copied, do not modify)
     * @param over  the limit, by row and column, at most 4 (not copied, do not modify)
     * @param now   gain and phase error of the model (not copied, do not modify)
     */
    public record Region(AllowedErrors.Least least, double[] gain, double[] phase, double[][] over, double[] now) { }

    static AllowedTable of(FilterFacts facts, double[] grid) {
        AllowedErrors allowed = facts.allowed();
        List<Row> rows = new ArrayList<>();
        for (double f : grid) {
            for (Axis axis : Axis.ALL) {
                Map<Kind, Span> spans = allowed.at(axis, f);
                rows.add(new Row(f, axis, spans.get(Kind.GAIN).nearest(), spans.get(Kind.PHASE).nearest(),
                    spans.get(Kind.DELAY).nearest()));
            }
        }
        return new AllowedTable(rows, facts.least().stream().map(l -> new Tightest(l, allowed.at(l.axis(), l.frequencyHz()).get(l.kind()),
            allowed.now(l.kind(), l.axis()))).toList(), facts.least().stream()
            .filter(l -> l.kind() == Kind.GAIN && Double.isFinite(l.value())).min(Comparator.comparingDouble(l -> Math.abs(l.value())))
            .map(l -> region(allowed, l)));
    }

    private static Region region(AllowedErrors allowed, AllowedErrors.Least least) {
        Map<Kind, Span> spans = allowed.at(least.axis(), least.frequencyHz());
        double[] gain = ends(spans.get(Kind.GAIN), 0.01);
        double[] phase = ends(spans.get(Kind.PHASE), Math.toRadians(1));
        double[][] z = new double[REGION][REGION];
        for (int n = 0; n < REGION; n++) {
            for (int m = 0; m < REGION; m++) {
                z[n][m] = Math.min(4, allowed.ratio(least.axis(), least.frequencyHz(), gain[0] + (gain[1] - gain[0]) * m / (REGION - 1),
                    phase[0] + (phase[1] - phase[0]) * n / (REGION - 1)));
            }
        }
        return new Region(least, gain, phase, z, new double[] {allowed.now(Kind.GAIN, least.axis()),
            allowed.now(Kind.PHASE, least.axis())});
    }

    /** Ends somewhat beyond a span, on quarters of a unit that divides well. */
    private static double[] ends(Span span, double unit) {
        double wide = Math.min(2, span.high() - span.low());
        double step = unit * StrictMath.pow(10, Math.floor(StrictMath.log10(wide / unit / 2)));
        double middle = Double.isFinite(span.low() + span.high()) ? (span.low() + span.high()) / 2 : 0;
        double from = step * Math.floor((middle - 0.65 * wide) / step);
        double quarter = step * Math.ceil((middle + 0.65 * wide - from) / step / 4);
        return new double[] {from, from + 4 * quarter};
    }
}
