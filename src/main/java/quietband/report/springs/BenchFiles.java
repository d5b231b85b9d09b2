package quietband.report.springs;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import quietband.model.Axis;
import quietband.model.Vec;
import quietband.report.assess.AssessmentSources;
import quietband.report.assess.AssessmentText;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.page.Caution;
import quietband.report.page.CommandPage;
import quietband.report.page.PageHead;
import quietband.report.page.PageTable;
import quietband.report.page.PageTemplates;
import quietband.report.tolerance.ToleranceFiles;
import quietband.tuning.springs.BenchTuning;

/** What the tuning of a unit on the bench writes: the unit and the tuned unit as models, the shift table, page, summary, text. */
public final class BenchFiles {

    private final BenchTuning t;
    private final Provenance from;

    /** For a tuning. */
    public BenchFiles(BenchTuning tuning, Provenance from) {
        this.t = tuning;
        this.from = from;
    }

    /** Writes all files. */
    public void writeTo(ResultDirectory directory) {
        ToleranceFiles.write(directory, "", t.tuned().bundle());
        ToleranceFiles.write(directory, "unit/", t.unit().bundle());
        directory.write("shifts.csv", this::shifts);
        String page = PageTemplates.page(page());
        directory.write("report.html", w -> w.write(page));
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
    }

    private void shifts(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "change", "x_mm", "y_mm", "z_mm", "mode", "shape", "frequency_hz", "changed_hz", "shift_hz");
        for (BenchTuning.Shift s : t.shifts()) {
            csv.cell(s.change()).cell(1e3 * s.at().x()).cell(1e3 * s.at().y()).cell(1e3 * s.at().z()).cell(Integer.toString(s.mode()))
                .cell(s.shape()).cell(s.fromHz()).cell(s.toHz()).cell(s.toHz() - s.fromHz());
            csv.end();
        }
    }

    private List<List<String>> corners() {
        List<List<String>> rows = new ArrayList<>();
        for (Axis a : Axis.ALL) {
            rows.add(List.of(a.letter(), NumberFormat.brief(t.measuredHz().get(a), 5), NumberFormat.brief(t.wantedHz().get(a), 5),
                NumberFormat.brief(t.ballastHz().get(a), 5), percent(t.rate().get(a) - 1), NumberFormat.brief(t.tunedHz().get(a), 5)));
        }
        return rows;
    }

    private static String percent(double share) {
        return Math.abs(share) < 5e-5 ? "none" : String.format(Locale.ROOT, "%+.2f %%", 100 * share);
    }

    private List<String> sentences() {
        List<String> s = new ArrayList<>();
        s.add(t.ballast() > 0 ? String.format(Locale.ROOT, "Add %.1f g at %s, which leaves the centre of gravity where it is.",
            1e3 * t.ballast(),
            SpringPage.mm(t.at())) : "No ballast: the unit is not too stiff as a whole, and mass cannot be taken away.");
        Vec rate = t.rate();
        s.add(Axis.ALL.stream().allMatch(a -> Math.abs(rate.get(a) - 1) < 5e-5) ? "That is enough: every corner is within 0.2 % "
            + "of what is wanted."
            : String.format(Locale.ROOT, "Then change the rates of all springs by %s along x, %s along y and %s along z (shims, "
            + "or other springs).",
                percent(rate.x() - 1), percent(rate.y() - 1), percent(rate.z() - 1)));
        return s;
    }

    private CommandPage page() {
        String title = t.tuned().design().title();
        PageHead head = new PageHead(title.isEmpty() ? from.input() : title, "BENCH TUNING", "none",
            sentences().get(0), from, AssessmentSources.today());
        PageTable corners = new PageTable("Corners, Hz", List.of("axis", "measured", "wanted", "with the ballast", "rate then",
            "tuned"), corners());
        Map<String, List<String>> byChange = new LinkedHashMap<>();
        List<String> top = new ArrayList<>(List.of("change"));
        for (BenchTuning.Shift s : t.shifts()) {
            byChange.computeIfAbsent(s.change() + " " + SpringPage.mm(s.at()), c -> new ArrayList<>(List.of(c)))
                .add(String.format(Locale.ROOT, "%+.3f", s.toHz() - s.fromHz()));
            if (top.size() <= 6) {
                top.add(NumberFormat.brief(s.fromHz(), 4) + " Hz, " + s.shape());
            }
        }
        PageTable shifts = new PageTable("Shift of each mode of the unit, Hz", top, List.copyOf(byChange.values()));
        return new CommandPage(head, List.of(new CommandPage.Part("What brings the unit to the wanted corners", sentences(),
            List.of(corners),
            List.of()), new CommandPage.Part("What small changes do", List.of("Each row is one change alone, worked out in full; "
            + "small ones add up."),
            List.of(shifts), List.of())));
    }

    /** The summary. */
    public String json() {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("title", t.tuned().design().title());
            axes(json, "measured_corner_hz", t.measuredHz());
            axes(json, "wanted_corner_hz", t.wantedHz());
            json.field("ballast_g", 1e3 * t.ballast());
            axes(json, "ballast_at_mm", t.at().times(1e3));
            axes(json, "corner_with_ballast_hz", t.ballastHz());
            axes(json, "rate_factor", t.rate());
            axes(json, "corner_hz", t.tunedHz());
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    private static void axes(Json json, String name, Vec v) {
        json.object(name, () -> Axis.ALL.forEach(a -> json.field(a.letter(), v.get(a))));
    }

    /** The summary for a terminal. */
    public String text() {
        List<String> lines = new ArrayList<>();
        lines.add(t.tuned().design().title().isEmpty() ? from.input() : t.tuned().design().title());
        lines.add("");
        lines.add(String.format(Locale.ROOT, "%-6s %10s %10s %14s %10s %10s", "corner", "measured", "wanted", "with ballast",
            "rate then", "tuned"));
        corners().forEach(r -> lines.add(String.format(Locale.ROOT, "%-6s %10s %10s %14s %10s %10s", r.toArray())));
        lines.add("");
        sentences().forEach(s -> AssessmentText.hang("", s, lines));
        lines.add("shifts.csv has what +0.5 g at each corner and 1 % on each spring do.");
        lines.add(Caution.PREDICTION);
        return String.join("\n", lines) + "\n";
    }
}
