package quietband.report.compare;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import quietband.identification.MeasuredResponse;
import quietband.identification.MeasurementAgreement;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.report.assess.AssessmentSources;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.file.ResultDirectory;
import quietband.report.page.Caution;
import quietband.report.page.CommandPage;
import quietband.report.page.PageHead;
import quietband.report.page.PageTable;
import quietband.report.page.PageTemplates;
import quietband.report.page.StackName;

/** What a comparison of a design with a measurement writes: a table, charts, a page, a summary, a text. */
public final class MeasuredFiles {

    private static final int NAMED = 6;

    private final Design design;
    private final Stack stack;
    private final String file;
    private final MeasuredResponse measured;
    private final Provenance from;
    private final List<MeasurementAgreement.Point> points;
    private final List<MeasurementAgreement.Stretch> off;
    private final boolean sensitivity;

    /**
     * Compares.
     *
     * @param stack which prediction; of no meaning for a transmissibility
     * @param file  name of the measured file
     */
    public MeasuredFiles(Design design, Stack stack, String file, MeasuredResponse measured, Provenance from) {
        this.design = design;
        this.stack = stack;
        this.file = file;
        this.measured = measured;
        this.from = from;
        this.points = MeasurementAgreement.points(design, stack, measured);
        this.off = MeasurementAgreement.stretches(points);
        this.sensitivity = measured.kind() == MeasuredResponse.Kind.SENSITIVITY;
    }

    private double shown(double magnitude) {
        return sensitivity ? magnitude * 1e9 : magnitude;
    }

    private String unit() {
        return sensitivity ? "ppb_per_g" : "ratio";
    }

    private boolean judged() {
        return points.stream().anyMatch(p -> !Double.isNaN(p.relativeError()));
    }

    /** Writes all files. */
    public void writeTo(ResultDirectory directory) {
        directory.write("compare.csv", this::table);
        List<String> svgs = new ArrayList<>();
        for (Axis axis : measured.axes().keySet()) {
            FrequencyChart chart = chart(axis);
            String svg = chart.svg();
            svgs.add(svg);
            directory.write(chart.name() + ".svg", w -> w.write(svg));
        }
        String page = PageTemplates.page(page(svgs));
        directory.write("report.html", w -> w.write(page));
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
    }

    private void table(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "frequency_hz", "axis", "measured_" + unit(), "predicted_" + unit(), "deviation_db",
            "phase_difference_deg", "relative_error", "off");
        for (MeasurementAgreement.Point p : points) {
            csv.cell(p.frequencyHz()).cell(p.axis().letter()).cell(shown(p.measured())).cell(shown(p.predicted()))
                .cell(p.deviationDb()).cell(Math.toDegrees(p.phase())).cell(p.relativeError()).cell(p.off() ? "yes" : "no").end();
        }
    }

    private FrequencyChart chart(Axis axis) {
        List<MeasurementAgreement.Point> own = points.stream().filter(p -> p.axis() == axis).toList();
        List<ChartLine> lines = new ArrayList<>();
        lines.add(line("predicted, " + StackName.of(stack), own, ChartStyle.of(Stack.COMBINED), p -> shown(p.predicted())));
        if (judged()) {
            ChartStyle edge = new ChartStyle(ChartStyle.FAINT, 1, List.of(2f, 2f), null);
            lines.add(line("measured, within its uncertainty", own, edge, p -> shown(p.measured() * (1 - p.relativeError()))));
            lines.add(line("", own, edge, p -> shown(p.measured() * (1 + p.relativeError()))));
        }
        ChartStyle dot = ChartStyle.number(0);
        lines.add(new ChartLine("measured", x(own), y(own, p -> p.off() ? Double.NaN : shown(p.measured())), dot, true));
        if (own.stream().anyMatch(MeasurementAgreement.Point::off)) {
            ChartStyle flag = new ChartStyle(ChartStyle.LIMIT.colour(), 1, List.of(), ChartStyle.number(3).marker());
            lines.add(new ChartLine("measured, off", x(own), y(own, p -> p.off() ? shown(p.measured()) : Double.NaN), flag, true));
        }
        double low = measured.frequencyHz()[0];
        double high = measured.frequencyHz()[measured.frequencyHz().length - 1];
        return new FrequencyChart("chart-measured-" + axis.letter(), "Measured against predicted, axis " + axis.letter(),
            sensitivity ? "sensitivity " + axis.letter() + ", ppb/g" : "transmissibility " + axis.letter(), low * 0.98, high * 1.02,
            FrequencyChart.Scale.decades(lines, 5), lines);
    }

    private static double[] x(List<MeasurementAgreement.Point> own) {
        return own.stream().mapToDouble(MeasurementAgreement.Point::frequencyHz).toArray();
    }

    private static double[] y(List<MeasurementAgreement.Point> own, ToDoubleFunction<MeasurementAgreement.Point> value) {
        return own.stream().mapToDouble(value).toArray();
    }

    private static ChartLine line(String name, List<MeasurementAgreement.Point> own, ChartStyle look,
        ToDoubleFunction<MeasurementAgreement.Point> value) {
        return new ChartLine(name, x(own), y(own, value), look);
    }

    private String sentence() {
        if (!judged()) {
            return String.format(Locale.ROOT, "The measurement states no uncertainty (column x_relative_error): no judgement. "
                + "Largest deviation %.2f dB.", points.stream().mapToDouble(p -> Math.abs(p.deviationDb())).max().orElse(0));
        }
        if (off.isEmpty()) {
            return "Measured and predicted agree within the measurement's uncertainty at every frequency.";
        }
        List<MeasurementAgreement.Stretch> worst = off.stream().sorted(Comparator.comparingDouble(s -> -Math.abs(s.worstDb())))
            .limit(NAMED).toList();
        return deviations() + " Off by more than the measurement's uncertainty: " + off.stream().filter(worst::contains)
            .map(MeasuredFiles::words).collect(Collectors.joining("; "))
            + (off.size() > NAMED ? "; and " + (off.size() - NAMED) + " stretches less far off, see compare.csv." : ".");
    }

    /** How far off all points are together; with one standard uncertainty stated, a good model has two thirds within, 95 % within twice. */
    private String deviations() {
        String each = measured.axes().keySet().stream().map(a -> String.format(Locale.ROOT, "%s %.2f dB", a.letter(),
            Math.sqrt(points.stream().filter(p -> p.axis() == a).mapToDouble(p -> p.deviationDb() * p.deviationDb()).average().orElse(0))))
            .collect(Collectors.joining(", "));
        long once = points.stream().filter(p -> within(p, 1)).count();
        long twice = points.stream().filter(p -> within(p, 2)).count();
        return String.format(Locale.ROOT, "Deviation, root mean square: %s; %d of %d magnitudes within the stated uncertainty, %d within "
            + "twice it.", each, once, points.size(), twice);
    }

    private static boolean within(MeasurementAgreement.Point p, double times) {
        return Math.abs(p.measured() - p.predicted()) <= times * p.relativeError() * p.measured() * (1 + 1e-9);
    }

    private static String words(MeasurementAgreement.Stretch s) {
        String where = s.fromHz() == s.toHz() ? "at " + QuantityText.hz(s.fromHz()) : QuantityText.range(s.fromHz(), s.toHz());
        return String.format(Locale.ROOT, "%s, axis %s, up to %+.2f dB", where, s.axis().letter(), s.worstDb());
    }

    private CommandPage page(List<String> svgs) {
        String verdict = !judged() ? "COMPARED" : off.isEmpty() ? "AGREES" : "DIFFERS";
        String kind = !judged() ? "none" : off.isEmpty() ? "holds" : "fails";
        String title = design.title().isEmpty() ? from.input() : design.title();
        List<List<String>> rows = points.stream().filter(MeasurementAgreement.Point::off).limit(200)
            .map(p -> List.of(QuantityText.hz(p.frequencyHz()),
            p.axis().letter(), NumberFormat.brief(shown(p.measured()), 4), NumberFormat.brief(shown(p.predicted()), 4),
            String.format(Locale.ROOT, "%+.2f", p.deviationDb()),
            Double.isNaN(p.phase()) ? "not measured" : String.format(Locale.ROOT, "%+.1f", Math.toDegrees(p.phase())),
            NumberFormat.brief(100 * p.relativeError(), 3))).toList();
        PageTable grid = new PageTable("Frequencies that are off (at most 200; all in compare.csv)",
            List.of("frequency", "axis", "measured, "
            + unit(), "predicted, " + unit(), "deviation, dB", "phase, deg", "uncertainty, %"), rows);
        return new CommandPage(new PageHead(title + " against " + file, verdict, kind, sentence(), from,
            AssessmentSources.today()),
            List.of(new CommandPage.Part("Measured against predicted", List.of(), List.of(), svgs),
                new CommandPage.Part("Where they differ", List.of(sentence()), rows.isEmpty() ? List.of() : List.of(grid), List.of())));
    }

    /** The summary. */
    public String json() {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("measured", file).field("stack", stack.key()).field("quantity", sensitivity ? "sensitivity" : "transmissibility")
                .field("judged", judged()).field("agrees", judged() ? off.isEmpty() : null).field("points", points.size());
            json.field("points_off", points.stream().filter(MeasurementAgreement.Point::off).count());
            json.array("off", () -> off.forEach(s -> json.object(() -> json.field("axis", s.axis().letter())
                .field("from_hz", s.fromHz()).field("to_hz", s.toHz()).field("worst_deviation_db", s.worstDb()))));
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    /** The summary for a terminal, at most 80 columns wide. */
    public String text() {
        StringBuilder text = new StringBuilder();
        int width = 0;
        String all = (design.title().isEmpty() ? from.input() : design.title()) + " against " + file + ": " + sentence();
        for (String word : all.split("\\s+")) {
            String piece = word.length() > 80 ? word.substring(0, 77) + "..." : word;
            boolean fits = width > 0 && width + 1 + piece.length() <= 80;
            text.append(width == 0 ? "" : fits ? " " : "\n").append(piece);
            width = fits ? width + 1 + piece.length() : piece.length();
        }
        return text.append("\n\n").append(Caution.PREDICTION).append('\n').toString();
    }
}
