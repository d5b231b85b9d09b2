package quietband.report.springs;

import quietband.model.Platform.Spring;
import quietband.report.assess.AssessmentSummary;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.Provenance;
import quietband.report.page.Report;
import quietband.tuning.parts.CoilSpring;
import quietband.tuning.parts.SpringPart;
import quietband.tuning.springs.SpringAnswer;

/** What the command springs found: changed model, parts list, sketch, charts, page, summary, text. */
public final class SpringReport {

    private SpringReport() { }

    /** The report. */
    public static Report of(SpringAnswer a, Provenance from) {
        Report report = new Report(a.changed().design().title(), from).of(a.changed().design());
        report.model("", a.changed().bundle());
        report.table("springs.csv", "spring,part,kind,pieces,x_mm,y_mm,z_mm,stiffness_x_n_per_mm,stiffness_y_n_per_mm,"
            + "stiffness_z_n_per_mm,damping_x_n_s_per_m,damping_y_n_s_per_m,damping_z_n_s_per_m,loss_factor,mass_g,preload_n,wire_mm,"
            + "mean_diameter_mm,active_coils,total_coils,free_length_mm,length_at_rest_mm,surge_hz",
            a.changed().design().platform().orElseThrow().springs(), (table, s) -> spring(table, s, part(a, s)));
        report.table("travel.csv", "natural_frequency_hz,sag_mm,sustained_mm,shock_mm", a.curve().rows(), (table, row) ->
            table.cell(row[0]).cells(1e3, row[1], row[2], row[3]));
        report.summary(json -> fields(json, a));
        SpringText.say(report, a);
        return report;
    }

    private static SpringPart part(SpringAnswer a, Spring s) {
        return a.parts().stream().filter(p -> p.group().equals(s.group())).findFirst().orElseThrow();
    }

    private static void spring(CsvWriter table, Spring s, SpringPart part) {
        table.cell(s.label()).cell(part.name()).cell(part.kind()).whole(part.perPlace()).cells(1e3, s.at().toArray())
            .cells(1e-3, s.stiffness().toArray()).cells(1, s.damping().toArray()).cell(s.lossFactor().z()).cell(1e3 * s.mass())
            .cell(part.preload());
        CoilSpring c = part.coil().orElse(null);
        if (c == null) {
            table.cells(1, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN)
                .cell(s.mass() > 0 ? Math.sqrt(s.stiffness().z() / s.mass()) / 2 : Double.NaN);
        } else {
            table.cells(1, 1e3 * c.wire(), 1e3 * c.diameter(), c.active(), c.active() + 2, 1e3 * c.freeLength(),
                1e3 * (c.freeLength() - part.preload() / c.rate()), c.surgeHz());
        }
    }

    private static void fields(Json json, SpringAnswer a) {
        json.field("title", a.changed().design().title()).field("targets_met", a.met());
        json.axes("natural_frequency_hz", a.cornerHz()::get).axes("wanted_natural_frequency_hz", a.wantedHz()::get).field("surge_hz",
            a.surgeHz());
        a.after().travel().ifPresent(t -> AssessmentSummary.travel(json, t));
        json.objects("findings", a.findings(), f -> json.field("name", f.name()).field("met", f.met()).field("found", f.words())
            .field("takes", f.takes().isEmpty() ? null : f.takes()));
        json.objects("parts", a.parts(), p -> json.field("group", p.group()).field("part", p.name()).field("kind", p.kind())
            .field("places", p.places()).field("pieces", (long) p.places() * p.perPlace()).field("preload_n", p.preload()));
        json.axes("moved_mm", a.shift().times(1e3)::get).field("ballast_g", 1e3 * a.ballast())
            .axes("ballast_at_mm", a.ballastAt().times(1e3)::get)
            .axes("elastic_centre_off_mm", a.elastic().offset().times(1e3)::get)
            .field("lift_off_level", a.liftOff()).field("tenfold_from_hz", a.tenfoldFromHz());
        json.object("tenfold_from_10_hz", () -> json.field("natural_frequency_hz", 10 / a.tenfold()).field("travel_mm",
            1e3 * a.tenfoldTravel(10))
            .field("box_mm", 1e3 * a.tenfoldBox(10)));
        json.objects("modes", a.after().modes(), m -> AssessmentSummary.mode(json, m));
        json.field("requirement_met", a.after().requirementMet().orElse(null));
        json.objects("requirements", a.after().requirements(), r -> AssessmentSummary.requirement(json, r));
        json.field("search", a.search().isEmpty() ? null : a.search()).items("warnings", a.after().warnings());
    }
}
