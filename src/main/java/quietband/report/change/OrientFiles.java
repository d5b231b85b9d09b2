package quietband.report.change;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import quietband.demand.ResidualDemand;
import quietband.model.Rotation;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.page.Caution;
import quietband.report.page.PageTemplates;
import quietband.report.page.StackName;
import quietband.report.tolerance.ToleranceFiles;
import quietband.response.FrequencyTable;
import quietband.response.verdict.Assessor;
import quietband.response.verdict.StackVerdict;
import quietband.tuning.orient.BlankShock;
import quietband.tuning.orient.Orientation;
import quietband.tuning.orient.SupportRow;
import quietband.units.Amounts;

/** What turning a resonator writes: the changed model, what an error of the angle costs, supports, chart, page, summary. */
public final class OrientFiles {

    private final ModelFile base;
    private final ModelFile changed;
    private final Orientation turn;
    private final Provenance from;
    private final double[] frequencies;
    private final int threads;
    private final StackVerdict before;
    private final StackVerdict after;

    /**
     * For one model.
     *
     * @param base        the model that is turned
     * @param frequencies of the chart, Hz
     */
    public OrientFiles(ModelFile base, Orientation turn, Provenance from, double[] frequencies, int threads) {
        this.base = base;
        this.turn = turn;
        this.from = from;
        this.frequencies = frequencies.clone();
        this.threads = threads;
        this.changed = turned(base, turn.turn());
        this.before = fullest(base);
        this.after = fullest(changed);
    }

    /**
     * A support tried.
     *
     * @param row    of the table
     * @param model  with it, turned as serves best
     * @param before figure of the goal with it and the turn the model has
     * @param after  figure of the goal with its best turn
     * @param bare   verdict of the resonator bolted down, without correction, turned
     * @param full   verdict of the stack with every measure, turned
     * @param shock  what the blank sees of the model's shock; empty without one
     */
    public record Tried(SupportRow row, ModelFile model, double before, double after, StackVerdict bare, StackVerdict full,
                        Optional<BlankShock> shock) {

        /**
         * Works out a support.
         *
         * @param with the model with it
         */
        public static Tried of(SupportRow row, ModelFile with, Orientation best) {
            ModelFile model = turned(with, best.turn());
            List<StackVerdict> verdicts = Assessor.assess(model.design()).verdicts();
            return new Tried(row, model, best.before(), best.after(), verdicts.get(0), verdicts.get(verdicts.size() - 1),
                BlankShock.of(model.design()));
        }

        /** Whether it resonates within the band. */
        boolean inBand() {
            return row.lowestHz() <= model.design().requirement().toHz();
        }
    }

    /** The model with a turn of its resonator in place of the one it has. */
    public static ModelFile turned(ModelFile base, Rotation turn) {
        Vec a = turn.axis();
        String axis = "{x: " + Amounts.print(a.x()) + ", y: " + Amounts.print(a.y()) + ", z: " + Amounts.print(a.z()) + "}";
        return base.withValue("oscillator.resonator.orientation", "{axis: " + axis + ", angle: "
            + Amounts.print(Math.toDegrees(turn.angle())) + " deg}");
    }

    private static StackVerdict fullest(ModelFile file) {
        List<StackVerdict> verdicts = Assessor.assess(file.design()).verdicts();
        return verdicts.get(verdicts.size() - 1);
    }

    /**
     * Writes all of them.
     *
     * @param known whether the table has the support that the model's sensitivity was measured on
     */
    public void writeTo(ResultDirectory directory, List<Tried> tried, boolean known) {
        ToleranceFiles.write(directory, "", changed.bundle());
        directory.write("angle_error.csv", this::errors);
        if (!tried.isEmpty()) {
            directory.write("supports.csv", w -> supports(w, tried));
            tried.forEach(t -> ToleranceFiles.write(directory, "supports/" + t.row().name() + "/", t.model().bundle()));
        }
        String svg = chart().svg();
        directory.write("chart-orient.svg", w -> w.write(svg));
        String summary = json(tried);
        directory.write("summary.json", w -> w.write(summary));
        String page = PageTemplates.page(OrientText.page(this, tried, known, svg));
        directory.write("report.html", w -> w.write(page));
    }

    /** The summary. */
    public String json(List<Tried> tried) {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("goal", turn.goal().name().toLowerCase(Locale.ROOT)).field("unit", OrientText.unit(turn));
            json.field("before", shown(turn.before())).field("after", shown(turn.after())).field("unturned", shown(turn.unturned()));
            json.object("turn", () -> {
                vector(json, "axis", turn.turn().axis(), 1);
                json.field("angle_deg", Math.toDegrees(turn.turn().angle()));
            });
            vector(json, "mounted_ppb_per_g", turn.mounted(), 1e9);
            json.field("stack", after.stack().key());
            json.object("worst_before", () -> worst(json, before)).object("worst_after", () -> worst(json, after));
            json.array("supports", () -> tried.forEach(t -> json.object(() -> json.field("support", t.row().name())
                .field("source", t.row().source()).field("invented", t.row().invented()).field("in_band", t.inBand())
                .field("lowest_resonance_hz", t.row().lowestHz()).field("before", shown(t.before())).field("after", shown(t.after()))
                .field("blank_shock_bolted_g", t.shock().map(BlankShock::bolted).orElse(Double.NaN))
                .field("blank_shock_sprung_g", t.shock().map(BlankShock::sprung).orElse(Double.NaN))
                .object("worst", () -> worst(json, t.full())))));
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    private static void vector(Json json, String name, Vec v, double scale) {
        json.object(name, () -> json.field("x", v.x() * scale).field("y", v.y() * scale).field("z", v.z() * scale));
    }

    private static void worst(Json json, StackVerdict v) {
        json.field("frequency_hz", v.worst().frequencyHz()).field("axis", v.worst().axis())
            .field("residual_ppb_per_g", v.worst().residualPerG() * 1e9).field("margin_db", v.worst().marginDb());
    }

    /** A figure of the goal in the unit people see. */
    double shown(double figure) {
        return turn.goal() == Orientation.Goal.NOISE ? figure * 1e3 : turn.limited() ? figure : figure * 1e9;
    }

    /** The summary for a terminal. */
    public String text(List<Tried> tried, boolean known) {
        return OrientText.of(this, tried, known);
    }

    Orientation turn() {
        return turn;
    }

    Provenance from() {
        return from;
    }

    ModelFile base() {
        return base;
    }

    StackVerdict before() {
        return before;
    }

    StackVerdict after() {
        return after;
    }

    private void errors(Writer writer) throws IOException {
        String unit = turn.goal() == Orientation.Goal.NOISE ? "_mrad" : turn.limited() ? "_over_limit" : "_ppb_per_g";
        CsvWriter table = new CsvWriter(writer, "angle_error_deg", "recalibrated" + unit, "weights_kept" + unit);
        table.cell(0.0).cell(shown(turn.after())).cell(shown(turn.after())).end();
        for (Orientation.AngleError e : turn.errors()) {
            table.cell(Math.toDegrees(e.angle())).cell(shown(e.recalibrated())).cell(shown(e.kept())).end();
        }
    }

    private void supports(Writer writer, List<Tried> tried) throws IOException {
        CsvWriter table = new CsvWriter(writer, "support", "source", "relative_sensitivity", "lowest_resonance_hz", "in_band",
            "bare_worst_ppb_per_g", "bare_worst_hz", "worst_ppb_per_g", "worst_hz", "margin_db", "goal_before", "goal_after",
            "blank_shock_bolted_g", "blank_shock_sprung_g");
        for (Tried t : tried) {
            table.cell(t.row().name()).cell(t.row().source()).cell(t.row().relative()).cell(t.row().lowestHz())
                .cell(t.inBand() ? "yes" : "no").cell(t.bare().worst().residualPerG() * 1e9).cell(t.bare().worst().frequencyHz())
                .cell(t.full().worst().residualPerG() * 1e9).cell(t.full().worst().frequencyHz()).cell(t.full().worst().marginDb())
                .cell(shown(t.before())).cell(shown(t.after())).cell(t.shock().map(BlankShock::bolted).orElse(Double.NaN))
                .cell(t.shock().map(BlankShock::sprung).orElse(Double.NaN)).end();
        }
    }

    private FrequencyChart chart() {
        List<ChartLine> lines = new ArrayList<>();
        lines.add(worstAxis("before", base, ChartStyle.number(0)));
        lines.add(worstAxis("after", changed, ChartStyle.of(Stack.COMBINED)));
        ResidualDemand demand = new ResidualDemand(base.design());
        if (demand.asked()) {
            double[] y = new double[frequencies.length];
            for (int i = 0; i < y.length; i++) {
                y[i] = 1e9 * demand.limit(ResidualDemand.VECTOR, frequencies[i]);
            }
            lines.add(new ChartLine("limit", frequencies, y, ChartStyle.LIMIT));
        }
        double top = Arrays.stream(frequencies).max().orElse(2000);
        double low = Arrays.stream(frequencies).min().orElse(10);
        return new FrequencyChart("chart-orient", "Worst axis before and after the turn", StackName.of(after.stack()) + ", ppb/g",
            low, top > low ? top : 1.1 * low, FrequencyChart.Scale.decades(lines, 4), lines);
    }

    private ChartLine worstAxis(String name, ModelFile file, ChartStyle look) {
        FrequencyTable table = FrequencyTable.of(file.design(), frequencies, threads);
        int stack = table.stacks().size() - 1;
        double[] y = table.rows().stream().mapToDouble(r -> 1e9 * Math.max(r.residualPerG()[stack][0],
            Math.max(r.residualPerG()[stack][1], r.residualPerG()[stack][2]))).toArray();
        return new ChartLine(name, frequencies, y, look);
    }
}
