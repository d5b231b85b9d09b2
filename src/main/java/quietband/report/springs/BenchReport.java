package quietband.report.springs;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import quietband.model.Axis;
import quietband.model.Vec;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.page.PageTable;
import quietband.report.page.Report;
import quietband.tuning.springs.BenchTuning;

/** The tuning of a unit on the bench: the unit and the tuned unit as models, the shift table, page, summary, text. */
public final class BenchReport {

    private BenchReport() { }

    /** The report. */
    public static Report of(BenchTuning t, Provenance from) {
        Report report = new Report(t.tuned().design().title(), from).of(t.tuned().design());
        report.model("", t.tuned().bundle()).model("unit/", t.unit().bundle());
        report.table("shifts.csv", "change,x_mm,y_mm,z_mm,mode,shape,frequency_hz,changed_hz,shift_hz", t.shifts(), (table, s) ->
            table.cell(s.change()).cells(1e3, s.at().toArray()).whole(s.mode()).cell(s.shape()).cell(s.fromHz()).cell(s.toHz())
                .cell(s.toHz() - s.fromHz()));
        report.summary(json -> json.field("title", t.tuned().design().title())
            .axes("measured_natural_frequency_hz", t.measuredHz()::get)
            .axes("wanted_natural_frequency_hz", t.wantedHz()::get).field("ballast_g", 1e3 * t.ballast())
            .axes("ballast_at_mm", t.at().times(1e3)::get).axes("natural_frequency_with_ballast_hz", t.ballastHz()::get)
            .axes("rate_factor", t.rate()::get).axes("natural_frequency_hz", t.tunedHz()::get));
        List<String> told = sentences(t);
        List<List<String>> corners = Axis.ALL.stream().map(a -> List.of(a.letter(), NumberFormat.brief(t.measuredHz().get(a), 5),
            NumberFormat.brief(t.wantedHz().get(a), 5), NumberFormat.brief(t.ballastHz().get(a), 5), percent(t.rate().get(a) - 1),
            NumberFormat.brief(t.tunedHz().get(a), 5))).toList();
        report.line(report.title()).line("").line("%-6s %10s %10s %14s %10s %10s", "axis", "measured", "wanted", "with ballast",
            "rate then", "tuned");
        corners.forEach(r -> report.line("%-6s %10s %10s %14s %10s %10s", r.toArray()));
        report.line("");
        told.forEach(s -> report.hang("", s));
        report.line("shifts.csv has what +0.5 g at each corner and 1 % on each spring do.");
        report.head("BENCH TUNING", "none", told.get(0));
        report.part("What brings the unit to the wanted natural frequencies").say(told)
            .table("Natural frequencies, Hz", List.of("axis", "measured", "wanted",
            "with the ballast", "rate then", "tuned"), corners);
        report.part("What small changes do").say("Each row is one change alone, worked out in full; small ones add up.").table(shifts(t));
        return report;
    }

    private static PageTable shifts(BenchTuning t) {
        Map<String, List<String>> byChange = new LinkedHashMap<>();
        List<String> top = new ArrayList<>(List.of("change"));
        for (BenchTuning.Shift s : t.shifts()) {
            byChange.computeIfAbsent(s.change() + " " + SpringText.mm(s.at()), c -> new ArrayList<>(List.of(c)))
                .add(NumberFormat.text("%+.3f", s.toHz() - s.fromHz()));
            if (top.size() <= 6) {
                top.add(NumberFormat.brief(s.fromHz(), 4) + " Hz, " + s.shape());
            }
        }
        return new PageTable("Shift of each mode of the unit, Hz", top, List.copyOf(byChange.values()));
    }

    private static String percent(double share) {
        return Math.abs(share) < 5e-5 ? "none" : NumberFormat.text("%+.2f %%", 100 * share);
    }

    private static List<String> sentences(BenchTuning t) {
        Vec rate = t.rate();
        return List.of(t.ballast() > 0 ? NumberFormat.text("Add %.1f g at %s, which leaves the centre of gravity where it is.",
            1e3 * t.ballast(), SpringText.mm(t.at())) : "No ballast: the unit is not too stiff as a whole, and mass cannot be taken away.",
            Axis.ALL.stream().allMatch(a -> Math.abs(rate.get(a) - 1) < 5e-5) ? "That is enough: every natural frequency is within 0.2 % "
            + "of what is wanted." : NumberFormat.text("Then change the rates of all springs by %s along x, %s along y and %s "
            + "along z (shims, or other springs).", percent(rate.x() - 1), percent(rate.y() - 1), percent(rate.z() - 1)));
    }
}
