package quietband.report.filter;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import quietband.identification.trim.PathTrim;
import quietband.identification.trim.TrimmedUnit;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.report.page.Report;
import quietband.response.verdict.StackVerdict;
import quietband.study.filter.TrimStudy;

/** A trim in words, tables and charts. */
final class TrimText {

    private TrimText() { }

    private static final int MOST_CHARTED = 4;

    static void say(Report report, TrimStudy study) {
        PathTrim trim = study.trim();
        List<List<String>> rows = rows(trim);
        report.line(report.title()).origin().line("").line("value +- half the 95 % interval");
        rows.forEach(row -> report.line("sensor %s: gain %s %%, phase %s deg, delay %s us; weight %s ppb/g, new %s ppb/g", row.toArray()));
        report.line("");
        study.units().forEach(u -> report.line(readings(u.unit())).line(model(u)).line(absorb(u, trim.model().design())));
        report.lines(notes(trim).stream().map(n -> "note: " + n).toList()).line("");
        boolean doubt = trim.units().stream().anyMatch(u -> !u.notes().isEmpty());
        report.head(doubt ? "TRIMMED, WITH DOUBTS" : "TRIMMED", "none",
            study.units().size() == 1 ? model(study.units().get(0)) : study.units().size() + " units");
        report.part("Errors and new weights").say("Errors of the path against the model's path without any error, from the difference of "
            + "the runs with the cancellation off and on (" + (trim.bolted() ? "bolted to the shaker" : "on its platform")
            + "); +- is half the 95 % interval.", "The new weights leave least of the run with the cancellation off, as least squares over "
            + "the limit. model.yaml has the errors, the weights of the run and the unit's own sensitivity as found; trimmed/model.yaml "
            + "has the new weights" + (study.units().size() > 1 ? ", in a folder for each serial." : "."))
            .say(study.units().stream().map(u -> readings(u.unit()) + ".").toList())
            .say(study.units().stream().map(u -> model(u) + ".").toList())
            .say(study.units().stream().map(u -> absorb(u, trim.model().design()) + ".").toList())
            .say(notes(trim).stream().map(n -> "Mind: " + n + ".").toList()).table("Found per sensor", HEAD, rows);
        Report.Part readings = report.part("Readings before and after").say("Dots: measured. The line is what the new weights leave of the "
            + "run with the cancellation off, with the errors as found.");
        study.units().stream().limit(MOST_CHARTED).forEach(u -> Axis.ALL.forEach(axis -> readings.chart(chart(u.unit(), axis,
            study.units().size() == 1 ? "" : "-" + u.unit().serial().replace('.', '-').replace('_', '-')))));
    }

    static List<String> notes(PathTrim trim) {
        List<String> notes = new ArrayList<>(trim.notes());
        trim.units().forEach(u -> u.notes().forEach(n -> notes.add(name(u) + n)));
        return notes;
    }

    private static String name(TrimmedUnit u) {
        return u.serial().isEmpty() ? "" : u.serial() + ", ";
    }

    private static String found(TrimmedUnit.Found f, double unit, int digits) {
        if (Double.isNaN(f.value())) {
            return "-";
        }
        String value = NumberFormat.text("%+." + digits + "f", unit * f.value());
        return Double.isNaN(f.error()) ? value : value + NumberFormat.text(" +- %s", NumberFormat.brief(unit * f.half(), 2));
    }

    private static List<List<String>> rows(PathTrim trim) {
        List<List<String>> rows = new ArrayList<>();
        for (TrimmedUnit u : trim.units()) {
            for (TrimmedUnit.Sensor s : u.axes()) {
                rows.add(List.of((u.serial() + " " + s.axis().letter()).strip(), found(s.gain(), 100, 3),
                    found(s.phase(), Math.toDegrees(1), 3), found(s.delay(), 1e6, 3), QuantityText.ppb(s.weightPerG()),
                    found(s.newWeight(), 1e9, 5), QuantityText.ppb(u.sensitivityPerG().get(s.axis())) + " +- "
                    + NumberFormat.brief(1e9 * u.sensitivityError().get(s.axis()), 2)));
            }
        }
        return rows;
    }

    private static final List<String> HEAD = List.of("sensor", "gain error, %", "phase error, deg", "delay error, us",
        "weight in the run, ppb/g", "new weight, ppb/g", "own sensitivity, ppb/g");

    private static String readings(TrimmedUnit u) {
        return NumberFormat.text("%sreadings: rms %s ppb/g before, %s with the new weights; worst %s before, %s after",
            name(u), QuantityText.ppb(u.rms(false)), QuantityText.ppb(u.rms(true)), worst(u, false), worst(u, true));
    }

    private static String worst(TrimmedUnit u, boolean trimmed) {
        return u.worst(trimmed).map(p -> QuantityText.ppb((trimmed ? p.after() : p.on()).norm()) + " ppb/g at "
            + QuantityText.hz(p.frequencyHz())
            + " along " + p.axis().letter()).orElse("-");
    }

    private static String model(TrimStudy.Unit u) {
        return name(u.unit()) + "model: " + sentence(u.before()) + " before, " + sentence(u.after()) + " with the new weights";
    }

    private static String sentence(StackVerdict v) {
        return NumberFormat.text("worst %s ppb/g at %s%s", QuantityText.ppb(v.worst().residualPerG()),
            QuantityText.hz(v.worst().frequencyHz()), v.asked() ? " (margin " + QuantityText.db(v.worst().marginDb()) + ")" : "");
    }

    /** What a filter would have to do to take phase and delay errors out, which no weight can. */
    private static String absorb(TrimStudy.Unit each, Design design) {
        TrimmedUnit u = each.unit();
        double rate = design.cancellation().orElseThrow().path().sampleRateHz();
        List<String> axes = new ArrayList<>();
        for (TrimmedUnit.Sensor s : u.axes()) {
            if (!Double.isNaN(s.phase().value())) {
                double delay = Double.isNaN(s.delay().value()) ? 0 : s.delay().value();
                String samples = rate > 0 ? NumberFormat.text(" (%.3f samples)", Math.abs(delay) * rate) : "";
                axes.add(NumberFormat.text("%s %+.3f deg and %s of %.3f us%s", s.axis().letter(),
                    -Math.toDegrees(s.phase().value()), delay >= 0 ? "an advance" : "a delay", 1e6 * Math.abs(delay), samples));
            }
        }
        return name(u) + "no weight takes out phase and delay; a filter that absorbs them turns " + String.join("; ", axes)
            + " and leaves, weighted by the "
            + "unit's own sensitivity, "
            + sentence(each.absorbed()) + (rate > 0 ? "; filter designs it from the model with the errors found"
            : "; filter --analog designs a network for the model "
            + "with the errors found");
    }

    private static FrequencyChart chart(TrimmedUnit u, Axis axis, String serial) {
        List<TrimmedUnit.Point> own = u.points().stream().filter(p -> p.axis() == axis).toList();
        double[] f = own.stream().mapToDouble(TrimmedUnit.Point::frequencyHz).toArray();
        List<ChartLine> lines = new ArrayList<>();
        lines.add(new ChartLine("off", f, of(own, p -> p.off().norm()), ChartStyle.number(4), true));
        lines.add(new ChartLine("on, before", f, of(own, p -> p.on().norm()), ChartStyle.number(1), true));
        lines.add(new ChartLine("on, new weights", f, of(own, p -> p.after().norm()), ChartStyle.of(Stack.COMBINED), f.length == 1));
        if (own.stream().allMatch(p -> Double.isFinite(p.limit()))) {
            lines.add(new ChartLine("limit", f, of(own, TrimmedUnit.Point::limit), ChartStyle.LIMIT));
        }
        double wide = f[0] == f[f.length - 1] ? 1.5 : 1.02;
        return new FrequencyChart("chart-trim" + serial + "-" + axis.letter(), (u.serial() + " axis " + axis.letter()).strip()
            + ": readings off, on, and with the new weights", (u.serial() + " " + axis.letter()).strip() + ", ppb/g", f[0] / wide,
            f[f.length - 1] * wide,
            FrequencyChart.Scale.decades(lines, 5), lines);
    }

    private static double[] of(List<TrimmedUnit.Point> points, ToDoubleFunction<TrimmedUnit.Point> value) {
        return points.stream().mapToDouble(p -> 1e9 * value.applyAsDouble(p)).toArray();
    }
}
