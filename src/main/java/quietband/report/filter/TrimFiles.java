package quietband.report.filter;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import quietband.identification.trim.PathTrim;
import quietband.identification.trim.TrimmedUnit;
import quietband.model.edit.ModelFile;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.page.Caution;
import quietband.report.page.PageTemplates;
import quietband.report.tolerance.ToleranceFiles;

/** What a trim writes: a table, two changed models for each unit, summary, page, text. */
public final class TrimFiles {

    private static final int MOST_CHARTED = 4;

    private final PathTrim trim;
    private final Provenance from;
    private final List<TrimText.Unit> units = new ArrayList<>();

    /** For a finished trim; works out what the changed models do. */
    public TrimFiles(PathTrim trim, Provenance from) {
        this.trim = trim;
        this.from = from;
        for (TrimmedUnit u : trim.units()) {
            units.add(new TrimText.Unit(u, PathTrim.verdict(trim.found(u)), PathTrim.verdict(trim.trimmed(u)),
                PathTrim.verdict(trim.absorbed(u))));
        }
    }

    /** Writes all files. */
    public void writeTo(ResultDirectory directory) {
        directory.write("trim.csv", this::values);
        directory.write("trimmed.csv", this::points);
        for (TrimmedUnit u : trim.units()) {
            String folder = trim.units().size() == 1 ? "" : u.serial() + "/";
            model(directory, folder, trim.found(u));
            model(directory, folder + "trimmed/", trim.trimmed(u));
        }
        List<FrequencyChart> charts = TrimText.charts(units.subList(0, Math.min(MOST_CHARTED, units.size())), trim);
        List<String> svgs = charts.stream().map(FrequencyChart::svg).toList();
        for (int i = 0; i < svgs.size(); i++) {
            String svg = svgs.get(i);
            directory.write(charts.get(i).name() + ".svg", w -> w.write(svg));
        }
        String page = PageTemplates.page(TrimText.page(trim, units, from, svgs));
        directory.write("report.html", w -> w.write(page));
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
    }

    private static void model(ResultDirectory directory, String folder, ModelFile file) {
        ToleranceFiles.write(directory, folder, file.bundle());
    }

    private void values(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "serial", "axis", "gain_percent", "gain_standard_error_percent", "gain_95_percent",
            "phase_deg",
            "phase_standard_error_deg", "phase_95_deg", "delay_us", "delay_standard_error_us", "delay_95_us", "weight_ppb_per_g",
            "new_weight_ppb_per_g", "new_weight_standard_error_ppb_per_g", "new_weight_95_ppb_per_g", "sensitivity_ppb_per_g",
            "sensitivity_standard_error_ppb_per_g");
        for (TrimmedUnit u : trim.units()) {
            for (TrimmedUnit.Sensor s : u.axes()) {
                csv.cell(u.serial()).cell(s.axis().letter());
                found(csv, s.gain(), 100);
                found(csv, s.phase(), Math.toDegrees(1));
                found(csv, s.delay(), 1e6);
                csv.cell(1e9 * s.weightPerG());
                found(csv, s.newWeight(), 1e9);
                csv.cell(1e9 * u.sensitivityPerG().get(s.axis())).cell(1e9 * u.sensitivityError().get(s.axis())).end();
            }
        }
    }

    private static void found(CsvWriter csv, TrimmedUnit.Found found, double unit) {
        csv.cell(unit * found.value()).cell(unit * found.error()).cell(unit * found.half());
    }

    private void points(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "serial", "axis", "frequency_hz", "off_ppb_per_g", "on_ppb_per_g", "trimmed_ppb_per_g",
            "limit_ppb_per_g");
        for (TrimmedUnit u : trim.units()) {
            for (TrimmedUnit.Point p : u.points()) {
                csv.cell(u.serial()).cell(p.axis().letter()).cell(p.frequencyHz()).cell(1e9 * p.off().norm()).cell(1e9 * p.on().norm())
                    .cell(1e9 * p.after().norm()).cell(1e9 * p.limit()).end();
            }
        }
    }

    /** The summary. */
    public String json() {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            json.field("bolted", trim.bolted());
            json.array("units", () -> units.forEach(u -> json.object(() -> unit(json, u))));
            json.array("warnings", () -> TrimText.notes(trim).forEach(json::item));
            json.field("note", Caution.PREDICTION);
        });
        return json.text();
    }

    private static void unit(Json json, TrimText.Unit each) {
        TrimmedUnit u = each.unit();
        json.field("serial", u.serial());
        json.object("axes", () -> u.axes().forEach(s -> json.object(s.axis().letter(), () -> {
            found(json, "gain_percent", s.gain(), 100);
            found(json, "phase_deg", s.phase(), Math.toDegrees(1));
            found(json, "delay_us", s.delay(), 1e6);
            json.field("weight_ppb_per_g", 1e9 * s.weightPerG());
            found(json, "new_weight_ppb_per_g", s.newWeight(), 1e9);
            json.field("phase_delay_correlation", s.correlation())
                .field("sensitivity_ppb_per_g", 1e9 * u.sensitivityPerG().get(s.axis()))
                .field("sensitivity_standard_error_ppb_per_g", 1e9 * u.sensitivityError().get(s.axis()));
        })));
        for (boolean trimmed : new boolean[] {false, true}) {
            json.object(trimmed ? "readings_trimmed" : "readings_before", () -> {
                json.field("rms_ppb_per_g", 1e9 * u.rms(trimmed));
                u.worst(trimmed).ifPresent(p -> json.field("frequency_hz", p.frequencyHz()).field("axis", p.axis().letter())
                    .field("residual_ppb_per_g", 1e9 * (trimmed ? p.after() : p.on()).norm()).field("limit_ppb_per_g", 1e9 * p.limit()));
            });
        }
        json.object("model_before", () -> FilterSummary.verdict(json, each.before()));
        json.object("model_trimmed", () -> FilterSummary.verdict(json, each.after()));
        json.object("model_absorbed", () -> FilterSummary.verdict(json, each.absorbed()));
        json.field("chi_square", u.quality().chiSquare()).field("off_chi_square", u.quality().offChiSquare())
            .field("relative_noise", u.quality().noise());
    }

    private static void found(Json json, String name, TrimmedUnit.Found found, double unit) {
        json.object(name, () -> json.field("value", unit * found.value()).field("standard_error", unit * found.error())
            .field("low_95", unit * (found.value() - found.half())).field("high_95", unit * (found.value() + found.half())));
    }

    /** The summary for a terminal. */
    public String text() {
        return TrimText.text(trim, units, from);
    }
}
