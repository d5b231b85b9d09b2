package quietband.report.shaker;

import java.util.List;
import java.util.stream.Collectors;
import quietband.identification.shaker.TestPlan;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.page.Caution;
import quietband.report.page.Report;

/** A test plan: table, page to take along, and an empty run to fill in. */
public final class PlanReport {

    private static final List<String> RULES = List.of(
        "Orientations: the housing's x, then y, then z along the shaker; 2 g tip-over readings (axis up, axis down, up again) before and "
            + "after each, at rest.",
        "Each dwell: begin at the start level, look at travel and sidebands, then step up to the level stated, never beyond; hold it as "
            + "long as stated, read, go back to zero before the next frequency.",
        "Record: frequency, peak acceleration along the axis (state peak or rms), motion along the other two axes, level of both "
            + "first-order sidebands over the carrier, phase of the frequency's deviation against the acceleration, noise floor "
            + "beside the sideband, and the output frequency at rest before and after.",
        "Stop when a reading is 3 dB off what is expected, when something rattles, or when the frequency at rest does not come back.",
        "Levels use at most half of travel, preload, sensor range and tuning range by the model; the model may be wrong.");

    private PlanReport() { }

    /** The report. */
    public static Report of(Design design, TestPlan plan, Provenance from) {
        Report report = new Report(design.title(), from).of(design).withoutNote();
        report.table("plan.csv", "axis,frequency_hz,start_peak_g,peak_g,dwell_s,without_cancellation_dbc,with_cancellation_dbc,limited_by",
            plan.steps(), (table, s) -> table.cell(s.axis().letter()).cell(s.frequencyHz()).cell(s.startG()).cell(s.peakG())
                .cell(s.seconds()).cell(s.withoutDbc()).cell(s.withDbc()).known(s.limitedBy()));
        // ready to be filled in and given to the command shaker
        report.table("run.csv", "serial,axis,frequency_hz,peak_g,sideband_dbc,phase_deg,floor_dbc,cross_x_g,cross_y_g,cross_z_g",
            plan.steps(), (table, s) -> table.known("").cell(s.axis().letter()).cell(s.frequencyHz()).cell(s.peakG())
                .known("").known("").known("").known("").known("").known(""));
        report.summary(json -> {
            json.field("steps", plan.steps().size()).field("duration_s", plan.steps().stream().mapToDouble(s -> 2 * s.seconds()).sum());
            json.objects("resonances_hz", plan.resonances(), f -> json.field("frequency_hz", f));
            json.field("caution", Caution.TEXT);
        });
        String amplification = plan.resonances().isEmpty() ? "No resonance within the band by the model." : "Expect amplification at "
            + plan.resonances().stream().map(QuantityText::hz).distinct().collect(Collectors.joining(", ")) + ".";
        List<List<String>> rows = plan.steps().stream().map(s -> List.of(s.axis().letter(), QuantityText.hz(s.frequencyHz()),
            NumberFormat.brief(s.startG(), 2) + " g", NumberFormat.brief(s.peakG(), 2) + " g", NumberFormat.brief(s.seconds(), 3) + " s",
            dbc(s.withoutDbc()), dbc(s.withDbc()), s.limitedBy())).toList();
        report.line("Test plan: %s, model %s, quietband %s", report.title(), from.shortHash(), from.version()).line("");
        report.line(Caution.TEXT).line(amplification).line("").line("%-4s %10s %9s %9s %7s %11s %11s  %s", "axis", "frequency", "start",
            "peak", "dwell", "without", "cancelled", "limited by");
        rows.forEach(row -> report.line("%-4s %10s %9s %9s %7s %11s %11s  %s", row.toArray()));
        report.line("").lines(RULES).head("TEST PLAN", "none", amplification);
        report.part("Before anything moves").say(Caution.TEXT, amplification);
        report.part("How").say(RULES);
        for (Axis axis : Axis.ALL) {
            report.part("Along " + axis.letter()).table("Peak levels of the housing; first-order sideband to expect", List.of("axis",
                "frequency", "start", "peak", "dwell", "without cancellation", "with cancellation", "limited by"),
                rows.stream().filter(r -> r.get(0).equals(axis.letter())).toList());
        }
        return report;
    }

    private static String dbc(double v) {
        return Double.isNaN(v) ? "-" : NumberFormat.text("%.1f dBc", v);
    }
}
