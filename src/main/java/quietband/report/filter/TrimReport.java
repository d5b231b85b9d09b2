package quietband.report.filter;

import java.io.IOException;
import java.util.List;
import quietband.identification.trim.PathTrim;
import quietband.identification.trim.TrimmedUnit;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.Provenance;
import quietband.report.page.Report;
import quietband.study.filter.TrimStudy;

/** A trim: a table, two changed models for each unit, summary, page, text. */
public final class TrimReport {

    private TrimReport() { }

    /** The report. */
    public static Report of(TrimStudy study, Provenance from) {
        PathTrim trim = study.trim();
        String title = trim.model().design().title();
        Report report = new Report((title.isEmpty() ? from.input() : title) + ", trimmed", from).fromReadings();
        report.table("trim.csv", List.of("serial", "axis", "gain_percent", "gain_standard_error_percent", "gain_95_percent", "phase_deg",
            "phase_standard_error_deg", "phase_95_deg", "delay_us", "delay_standard_error_us", "delay_95_us", "weight_ppb_per_g",
            "new_weight_ppb_per_g", "new_weight_standard_error_ppb_per_g", "new_weight_95_ppb_per_g", "sensitivity_ppb_per_g",
            "sensitivity_standard_error_ppb_per_g"), csv -> values(csv, trim));
        report.table("trimmed.csv", List.of("serial", "axis", "frequency_hz", "off_ppb_per_g", "on_ppb_per_g", "trimmed_ppb_per_g",
            "limit_ppb_per_g"), csv -> points(csv, trim));
        for (TrimStudy.Unit u : study.units()) {
            String folder = study.units().size() == 1 ? "" : u.unit().serial() + "/";
            report.model(folder, u.found().bundle()).model(folder + "trimmed/", u.trimmed().bundle());
        }
        report.summary(json -> json.field("bolted", trim.bolted()).objects("units", study.units(), u -> unit(json, u))
            .items("warnings", TrimText.notes(trim)));
        TrimText.say(report, study);
        return report;
    }

    private static void values(CsvWriter csv, PathTrim trim) throws IOException {
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
        csv.cells(unit, found.value(), found.error(), found.half());
    }

    private static void points(CsvWriter csv, PathTrim trim) throws IOException {
        for (TrimmedUnit u : trim.units()) {
            for (TrimmedUnit.Point p : u.points()) {
                csv.cell(u.serial()).cell(p.axis().letter()).cell(p.frequencyHz())
                    .cells(1e9, p.off().norm(), p.on().norm(), p.after().norm(), p.limit()).end();
            }
        }
    }

    private static void unit(Json json, TrimStudy.Unit each) {
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
        json.object("model_before", () -> FilterReport.verdict(json, each.before()));
        json.object("model_trimmed", () -> FilterReport.verdict(json, each.after()));
        json.object("model_absorbed", () -> FilterReport.verdict(json, each.absorbed()));
        json.field("chi_square", u.quality().chiSquare()).field("off_chi_square", u.quality().offChiSquare())
            .field("relative_noise", u.quality().noise());
    }

    private static void found(Json json, String name, TrimmedUnit.Found found, double unit) {
        json.object(name, () -> json.field("value", unit * found.value()).field("standard_error", unit * found.error())
            .field("low_95", unit * (found.value() - found.half())).field("high_95", unit * (found.value() + found.half())));
    }
}
