package quietband.report.springs;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import quietband.model.Axis;
import quietband.model.Platform.Spring;
import quietband.report.assess.AssessmentSummary;
import quietband.report.assess.AssessmentText;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.page.Caution;
import quietband.report.page.PageTemplates;
import quietband.report.page.VerdictSentence;
import quietband.report.tolerance.ToleranceFiles;
import quietband.tuning.parts.CoilSpring;
import quietband.tuning.parts.SpringPart;
import quietband.tuning.springs.SpringAnswer;

/** What the command springs writes: changed model, parts list, sketch, charts, page, summary, text. */
public final class SpringFiles {

    private final SpringAnswer a;
    private final Provenance from;

    /** For an answer. */
    public SpringFiles(SpringAnswer answer, Provenance from) {
        this.a = answer;
        this.from = from;
    }

    /** Writes all files. */
    public void writeTo(ResultDirectory directory) {
        ToleranceFiles.write(directory, "", a.changed().bundle());
        directory.write("springs.csv", this::table);
        directory.write("travel.csv", this::travel);
        String sketch = SpringSketch.svg(a);
        directory.write("sketch.svg", w -> w.write(sketch));
        String chart = SpringCharts.travel(a).svg();
        directory.write("chart-travel.svg", w -> w.write(chart));
        List<String> charts = new ArrayList<>(List.of(chart));
        SpringCharts.box(a).map(FrequencyChart::svg).ifPresent(svg -> {
            charts.add(svg);
            directory.write("chart-box.svg", w -> w.write(svg));
        });
        String page = PageTemplates.page(new SpringPage(a, from).page(sketch, charts));
        directory.write("report.html", w -> w.write(page));
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
    }

    private void table(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "spring", "part", "kind", "pieces", "x_mm", "y_mm", "z_mm",
            "stiffness_x_n_per_mm", "stiffness_y_n_per_mm",
            "stiffness_z_n_per_mm", "damping_x_n_s_per_m", "damping_y_n_s_per_m", "damping_z_n_s_per_m", "loss_factor",
            "mass_g", "preload_n",
            "wire_mm", "mean_diameter_mm", "active_coils", "total_coils", "free_length_mm", "length_at_rest_mm",
            "surge_hz");
        for (Spring s : a.changed().design().platform().orElseThrow().springs()) {
            SpringPart part = part(s);
            csv.cell(s.label()).cell(part.name()).cell(part.kind()).cell(Integer.toString(part.perPlace()));
            cells(csv, 1e3, s.at().toArray());
            cells(csv, 1e-3, s.stiffness().toArray());
            cells(csv, 1, s.damping().toArray());
            csv.cell(s.lossFactor().z()).cell(1e3 * s.mass()).cell(part.preload());
            CoilSpring c = part.coil().orElse(null);
            if (c == null) {
                cells(csv, 1, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
                csv.cell(s.mass() > 0 ? Math.sqrt(s.stiffness().z() / s.mass()) / 2 : Double.NaN);
            } else {
                cells(csv, 1, 1e3 * c.wire(), 1e3 * c.diameter(), c.active(), c.active() + 2, 1e3 * c.freeLength(),
                    1e3 * (c.freeLength() - part.preload() / c.rate()), c.surgeHz());
            }
            csv.end();
        }
    }

    private SpringPart part(Spring s) {
        return a.parts().stream().filter(p -> p.group().equals(s.group())).findFirst().orElseThrow();
    }

    private static void cells(CsvWriter csv, double factor, double... values) {
        for (double v : values) {
            csv.cell(factor * v);
        }
    }

    private void travel(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "corner_hz", "sag_mm", "sustained_mm", "shock_mm");
        for (double[] row : a.curve().rows()) {
            csv.cell(row[0]);
            cells(csv, 1e3, row[1], row[2], row[3]);
            csv.end();
        }
    }

    /** The summary. */
    public String json() {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("title", a.changed().design().title()).field("wishes_met", a.met());
            json.object("corner_hz", () -> axes(json, i -> a.cornerHz().get(i)));
            json.object("wanted_corner_hz", () -> axes(json, i -> a.wantedHz().get(i)));
            json.field("surge_hz", a.surgeHz());
            a.after().travel().ifPresent(t -> json.object("travel", () -> AssessmentSummary.travel(json, t)));
            json.array("findings", () -> a.findings().forEach(f -> json.object(() -> json.field("name", f.name())
                .field("met", f.met())
                .field("found", f.words()).field("takes", f.takes().isEmpty() ? null : f.takes()))));
            json.array("parts", () -> a.parts().forEach(p -> json.object(() -> {
                json.field("group", p.group()).field("part", p.name()).field("kind", p.kind()).field("places",
                    p.places())
                    .field("pieces", (long) p.places() * p.perPlace()).field("preload_n", p.preload());
            })));
            json.object("moved_mm", () -> axes(json, i -> 1e3 * a.shift().get(i)));
            json.field("ballast_g", 1e3 * a.ballast());
            json.object("ballast_at_mm", () -> axes(json, i -> 1e3 * a.ballastAt().get(i)));
            json.object("elastic_centre_off_mm", () -> axes(json, i -> 1e3 * a.elastic().offset().get(i)));
            json.field("lift_off_level", a.liftOff()).field("tenfold_from_hz", a.tenfoldFromHz());
            json.object("tenfold_from_10_hz", () -> json.field("corner_hz", 10 / a.tenfold()).field("travel_mm", 1e3 * a.tenfoldTravel(10))
                .field("box_mm", 1e3 * a.tenfoldBox(10)));
            json.array("modes", () -> a.after().modes().forEach(m -> AssessmentSummary.mode(json, m)));
            json.field("requirement_met", a.after().requirementMet().orElse(null));
            json.array("requirements", () -> a.after().requirements().forEach(r -> AssessmentSummary.requirement(json,
                r)));
            json.field("search", a.search().isEmpty() ? null : a.search());
            json.array("warnings", () -> a.after().warnings().forEach(json::item));
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    private static void axes(Json json, java.util.function.IntToDoubleFunction value) {
        for (Axis axis : Axis.ALL) {
            json.field(axis.letter(), value.applyAsDouble(axis.ordinal()));
        }
    }

    /** The summary for a terminal. */
    public String text() {
        List<String> lines = new ArrayList<>();
        lines.add(a.changed().design().title().isEmpty() ? from.input() : a.changed().design().title());
        lines.add("");
        a.parts().forEach(p -> AssessmentText.hang(p.group() + ": ", p.places() * p.perPlace() + " pieces, "
            + p.name(), lines));
        if (a.shift().length() > 0) {
            AssessmentText.hang("places moved by ", SpringPage.mm(a.shift())
                + " so that elastic centre and centre of gravity meet", lines);
        }
        if (a.ballast() > 0) {
            AssessmentText.hang("ballast ", NumberFormat.brief(1e3 * a.ballast(), 4) + " g at "
                + SpringPage.mm(a.ballastAt()), lines);
        }
        if (Double.isFinite(a.liftOff())) {
            AssessmentText.hang("lift-off ", "at " + NumberFormat.brief(a.liftOff(), 3) + " times the stated vibration",
                lines);
        }
        if (!a.search().isEmpty()) {
            AssessmentText.hang("", a.search(), lines);
        }
        lines.add("");
        for (var f : a.findings()) {
            AssessmentText.hang(f.met() ? "yes  " : "NO   ", f.words() + (f.met() ? "" : "; it would take "
                + f.takes()), lines);
        }
        lines.add("");
        lines.add(VerdictSentence.sentence(a.after()));
        lines.add(Caution.PREDICTION);
        return String.join("\n", lines) + "\n";
    }
}
