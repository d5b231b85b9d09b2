package quietband.report.compare;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import quietband.identification.MeasurementAgreement;
import quietband.model.Axis;
import quietband.model.Stack;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.page.Report;
import quietband.report.page.TerminalText;
import quietband.study.compare.MeasurementComparison;

/** A comparison of a design with a measurement: a table, charts, a page, a summary, a text. */
public final class MeasuredReport {

    private static final int NAMED = 6;
    private final MeasurementComparison c;
    private final String unit;

    private MeasuredReport(MeasurementComparison comparison) {
        this.c = comparison;
        this.unit = c.sensitivity() ? "ppb_per_g" : "ratio";
    }

    /** The report. */
    public static Report of(MeasurementComparison comparison, Provenance from) {
        return new MeasuredReport(comparison).report(from);
    }

    private double shown(double magnitude) {
        return c.sensitivity() ? magnitude * 1e9 : magnitude;
    }

    private Report report(Provenance from) {
        String title = c.design().title();
        Report report = new Report((title.isEmpty() ? from.input() : title) + " against " + c.file(), from).of(c.design());
        report.table("compare.csv", "frequency_hz,axis,measured_" + unit + ",predicted_" + unit + ",deviation_db,phase_difference_deg,"
            + "relative_error,off", c.points(), (csv, p) -> csv.cell(p.frequencyHz()).cell(p.axis().letter()).cell(shown(p.measured()))
            .cell(shown(p.predicted())).cell(p.deviationDb()).cell(Math.toDegrees(p.phase())).cell(p.relativeError()).yes(p.off()));
        report.summary(json -> {
            json.field("measured", c.file()).field("stack", c.stack().key())
                .field("quantity", c.sensitivity() ? "sensitivity" : "transmissibility").field("judged", c.judged())
                .field("agrees", c.judged() ? c.off().isEmpty() : null).field("points", c.points().size())
                .field("points_off", c.points().stream().filter(MeasurementAgreement.Point::off).count());
            json.objects("off", c.off(), s -> json.field("axis", s.axis().letter()).field("from_hz", s.fromHz()).field("to_hz", s.toHz())
                .field("worst_deviation_db", s.worstDb()));
        });
        String sentence = sentence();
        // a word that is longer than a line is cut
        report.hang("", Arrays.stream((report.title() + ": " + sentence).split("\\s+")).map(TerminalText::cut)
            .collect(Collectors.joining(" "))).line("");
        report.head(!c.judged() ? "COMPARED" : c.off().isEmpty() ? "AGREES" : "DIFFERS",
            !c.judged() ? "none" : c.off().isEmpty() ? "holds" : "fails", sentence);
        report.part("Measured against predicted").charts(c.measured().axes().keySet().stream().map(this::chart).toList());
        Report.Part differ = report.part("Where they differ").say(sentence);
        List<List<String>> rows = c.points().stream().filter(MeasurementAgreement.Point::off).limit(200).map(this::row).toList();
        if (!rows.isEmpty()) {
            differ.table("Frequencies that are off (at most 200; all in compare.csv)", List.of("frequency", "axis", "measured, " + unit,
                "predicted, " + unit, "deviation, dB", "phase, deg", "uncertainty, %"), rows);
        }
        return report;
    }

    private List<String> row(MeasurementAgreement.Point p) {
        return List.of(QuantityText.hz(p.frequencyHz()), p.axis().letter(), NumberFormat.brief(shown(p.measured()), 4),
            NumberFormat.brief(shown(p.predicted()), 4), NumberFormat.text("%+.2f", p.deviationDb()),
            Double.isNaN(p.phase()) ? "not measured" : NumberFormat.text("%+.1f", Math.toDegrees(p.phase())),
            NumberFormat.brief(100 * p.relativeError(), 3));
    }

    private FrequencyChart chart(Axis axis) {
        List<MeasurementAgreement.Point> own = c.points().stream().filter(p -> p.axis() == axis).toList();
        List<ChartLine> lines = new ArrayList<>();
        lines.add(line("predicted, " + c.stack().key(), own, ChartStyle.of(Stack.COMBINED), p -> shown(p.predicted())));
        if (c.judged()) {
            ChartStyle edge = new ChartStyle(ChartStyle.FAINT, 1, List.of(2f, 2f), null);
            lines.add(line("measured, within its uncertainty", own, edge, p -> shown(p.measured() * (1 - p.relativeError()))));
            lines.add(line("", own, edge, p -> shown(p.measured() * (1 + p.relativeError()))));
        }
        lines.add(line("measured", own, ChartStyle.number(0), p -> p.off() ? Double.NaN : shown(p.measured())).dotted());
        if (own.stream().anyMatch(MeasurementAgreement.Point::off)) {
            ChartStyle flag = new ChartStyle(ChartStyle.LIMIT.colour(), 1, List.of(), ChartStyle.number(3).marker());
            lines.add(line("measured, off", own, flag, p -> p.off() ? shown(p.measured()) : Double.NaN).dotted());
        }
        double[] f = c.measured().frequencyHz();
        return new FrequencyChart("chart-measured-" + axis.letter(), "Measured against predicted, axis " + axis.letter(),
            c.sensitivity() ? "sensitivity " + axis.letter() + ", ppb/g" : "transmissibility " + axis.letter(), f[0] * 0.98,
            f[f.length - 1] * 1.02, FrequencyChart.Scale.decades(lines, 5), lines);
    }

    private static ChartLine line(String name, List<MeasurementAgreement.Point> own, ChartStyle look,
        ToDoubleFunction<MeasurementAgreement.Point> value) {
        return ChartLine.of(name, own, MeasurementAgreement.Point::frequencyHz, value, look);
    }

    private String sentence() {
        if (!c.judged()) {
            return NumberFormat.text("The measurement states no uncertainty (column x_relative_error): no judgement. "
                + "Largest deviation %.2f dB.", c.points().stream().mapToDouble(p -> Math.abs(p.deviationDb())).max().orElse(0));
        }
        if (c.off().isEmpty()) {
            return "Measured and predicted agree within the measurement's uncertainty at every frequency.";
        }
        List<MeasurementAgreement.Stretch> worst = c.off().stream().sorted(Comparator.comparingDouble(s -> -Math.abs(s.worstDb())))
            .limit(NAMED).toList();
        return deviations() + " Off by more than the measurement's uncertainty: " + c.off().stream().filter(worst::contains)
            .map(MeasuredReport::words).collect(Collectors.joining("; "))
            + (c.off().size() > NAMED ? "; and " + (c.off().size() - NAMED) + " stretches less far off, see compare.csv." : ".");
    }

    private String deviations() {
        String each = c.rmsDb().entrySet().stream().map(e -> NumberFormat.text("%s %.2f dB", e.getKey().letter(), e.getValue()))
            .collect(Collectors.joining(", "));
        return NumberFormat.text("Deviation, root mean square: %s; %d of %d magnitudes within the stated uncertainty, %d within "
            + "twice it.", each, c.within(), c.points().size(), c.withinTwice());
    }

    private static String words(MeasurementAgreement.Stretch s) {
        String where = s.fromHz() == s.toHz() ? "at " + QuantityText.hz(s.fromHz()) : QuantityText.range(s.fromHz(), s.toHz());
        return NumberFormat.text("%s, axis %s, up to %+.2f dB", where, s.axis().letter(), s.worstDb());
    }
}
