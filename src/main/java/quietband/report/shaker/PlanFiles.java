package quietband.report.shaker;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import quietband.identification.shaker.TestPlan;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.report.assess.AssessmentSources;
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

/** A test plan: table, page to take along, and an empty run to fill in. */
public final class PlanFiles {

    private static final List<String> RULES = List.of(
        "Orientations: the housing's x, then y, then z along the shaker; turn-over readings (axis up, axis down, up again) before and "
            + "after each, at rest.",
        "Each dwell: begin at the start level, look at travel and sidebands, then step up to the level stated, never beyond; hold it as "
            + "long as stated, read, go back to zero before the next frequency.",
        "Record: frequency, peak acceleration along the axis (state peak or rms), motion along the other two axes, level of both "
            + "first-order sidebands over the carrier, phase of the frequency's deviation against the acceleration, noise floor "
            + "beside the sideband, and the output frequency at rest before and after.",
        "Stop when a reading is 3 dB off what is expected, when something rattles, or when the frequency at rest does not come back.",
        "Levels use at most half of travel, preload, sensor range and tuning range by the model; the model may be wrong.");

    private final Design design;
    private final TestPlan plan;
    private final Provenance from;

    /** For one plan. */
    public PlanFiles(Design design, TestPlan plan, Provenance from) {
        this.design = design;
        this.plan = plan;
        this.from = from;
    }

    /** Writes all of them. */
    public void writeTo(ResultDirectory directory) {
        directory.write("plan.csv", this::table);
        directory.write("run.csv", this::run);
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
        String page = PageTemplates.page(page());
        directory.write("report.html", w -> w.write(page));
    }

    private void table(Writer writer) throws IOException {
        CsvWriter table = new CsvWriter(writer, "axis", "frequency_hz", "start_peak_g", "peak_g", "dwell_s", "without_correction_dbc",
            "with_correction_dbc", "limited_by");
        for (TestPlan.Step s : plan.steps()) {
            table.cell(s.axis().letter()).cell(s.frequencyHz()).cell(s.startG()).cell(s.peakG()).cell(s.seconds()).cell(s.withoutDbc())
                .cell(s.withDbc());
            (s.limitedBy().isEmpty() ? table.cell(Double.NaN) : table.cell(s.limitedBy())).end();
        }
    }

    /** Ready to be filled in and given to {@code shaker}. */
    private void run(Writer writer) throws IOException {
        CsvWriter table = new CsvWriter(writer, "serial", "axis", "frequency_hz", "peak_g", "sideband_dbc", "phase_deg",
            "floor_dbc", "cross_x_g",
            "cross_y_g", "cross_z_g");
        for (TestPlan.Step s : plan.steps()) {
            table.cell(Double.NaN).cell(s.axis().letter()).cell(s.frequencyHz()).cell(s.peakG());
            for (int k = 0; k < 6; k++) {
                table.cell(Double.NaN);
            }
            table.end();
        }
    }

    /** The summary. */
    public String json() {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("steps", plan.steps().size()).field("duration_s", duration());
            json.array("resonances_hz", () -> plan.resonances().forEach(f -> json.object(() -> json.field("frequency_hz", f))));
            json.field("caution", Caution.TEXT);
        });
        return json.text();
    }

    private double duration() {
        return plan.steps().stream().mapToDouble(s -> 2 * s.seconds()).sum();
    }

    private String title() {
        return design.title().isEmpty() ? from.input() : design.title();
    }

    private String amplification() {
        return plan.resonances().isEmpty() ? "No resonance within the band by the model." : "Expect amplification at "
            + plan.resonances().stream().map(QuantityText::hz).distinct().collect(Collectors.joining(", ")) + ".";
    }

    /** The plan for a terminal. */
    public String text() {
        StringBuilder text = new StringBuilder();
        text.append(String.format(Locale.ROOT, "Test plan: %s, model %s, quietband %s%n%n", title(), from.modelHash().substring(0, 12),
            from.version()));
        text.append(Caution.TEXT).append("\n").append(amplification()).append("\n\n");
        text.append(String.format(Locale.ROOT, "%-4s %10s %9s %9s %7s %11s %11s  %s%n", "axis", "frequency", "start", "peak", "dwell",
            "without", "corrected", "limited by"));
        for (List<String> row : rows()) {
            text.append(String.format(Locale.ROOT, "%-4s %10s %9s %9s %7s %11s %11s  %s", row.toArray()).stripTrailing()).append('\n');
        }
        text.append('\n');
        RULES.forEach(r -> text.append(r).append('\n'));
        return text.toString();
    }

    private List<List<String>> rows() {
        List<List<String>> rows = new ArrayList<>();
        for (TestPlan.Step s : plan.steps()) {
            rows.add(List.of(s.axis().letter(), QuantityText.hz(s.frequencyHz()), NumberFormat.brief(s.startG(), 2) + " g",
                NumberFormat.brief(s.peakG(), 2)
                + " g", NumberFormat.brief(s.seconds(), 3) + " s", dbc(s.withoutDbc()), dbc(s.withDbc()), s.limitedBy()));
        }
        return rows;
    }

    private static String dbc(double v) {
        return Double.isNaN(v) ? "-" : String.format(Locale.ROOT, "%.1f dBc", v);
    }

    private CommandPage page() {
        PageHead head = new PageHead(title(), "TEST PLAN", "none", amplification(), from, AssessmentSources.today());
        List<CommandPage.Part> parts = new ArrayList<>();
        parts.add(new CommandPage.Part("Before anything moves", List.of(Caution.TEXT, amplification()), List.of(), List.of()));
        parts.add(new CommandPage.Part("How", RULES, List.of(), List.of()));
        for (Axis axis : Axis.ALL) {
            List<List<String>> own = rows().stream().filter(r -> r.get(0).equals(axis.letter())).toList();
            parts.add(new CommandPage.Part("Along " + axis.letter(), List.of(),
                List.of(new PageTable("Peak levels of the housing; first-order "
                + "sideband to expect", List.of("axis", "frequency", "start", "peak", "dwell", "without correction", "with correction",
                "limited by"), own)), List.of()));
        }
        return new CommandPage(head, parts);
    }
}
