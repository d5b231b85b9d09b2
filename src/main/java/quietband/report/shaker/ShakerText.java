package quietband.report.shaker;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quietband.identification.shaker.AxisSensitivity;
import quietband.identification.shaker.ResonatorSensitivity;
import quietband.identification.shaker.ShakerRules;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.page.Report;

/** What a run on the shaker says in words and rows, for a terminal and for the page. */
final class ShakerText {

    private static final int MOST = 40;

    private ShakerText() { }

    static void say(Report report, List<ResonatorSensitivity> units, ShakerRules rules, Provenance from, List<FrequencyChart> charts) {
        List<List<String>> rows = new ArrayList<>();
        units.stream().limit(MOST).forEach(u -> rows.addAll(rows(u)));
        report.line("%s %s, quietband %s, carrier %s%s", from.input(), from.shortHash(), from.version(), hz(rules.carrierHz()),
            rules.multiplier() == 1 ? "" : " times " + NumberFormat.brief(rules.multiplier(), 6)).line("");
        report.line("%-12s %-5s %10s %10s %10s %9s  %s", "serial", "axis", "ppb/g", "+- (95 %)", "spread", "used", "resonances");
        rows.forEach(row -> report.line("%-12s %-5s %10s %10s %10s %9s  %s", row.toArray()));
        if (units.size() > MOST) {
            report.line("and " + (units.size() - MOST) + " more resonators in axes.csv");
        }
        report.line("").lines(notes(units)).head("MEASURED", "none", verdict(units));
        report.part("Sensitivity").say("Carrier " + hz(rules.carrierHz()) + ", read at " + hz(rules.readHz()) + ". Sidebands by 20 "
            + "log10(J1(b)/J0(b)) above an index b of 0.1, 20 log10(b/2) below; b = |G| a f0/f, a peak. The mean is that of the readings "
            + "over the fitted response of the support; figures with +- have no known sign.").say(notes(units))
            .table("Sensitivity; half of the 95 % interval; standard deviation of single readings",
                List.of("serial", "axis", "ppb/g", "+- (95 %)", "spread, ppb/g", "used", "resonances"), rows);
        if (!charts.isEmpty()) {
            report.part("Over frequency").charts(charts);
        }
    }

    private static String hz(double f) {
        return f >= 1e6 ? NumberFormat.json(f / 1e6) + " MHz" : NumberFormat.json(f) + " Hz";
    }

    private static List<String> notes(List<ResonatorSensitivity> units) {
        List<String> notes = new ArrayList<>();
        for (ResonatorSensitivity unit : units) {
            String who = unit.serial().isEmpty() ? "" : unit.serial() + ": ";
            unit.axes().forEach((axis, a) -> a.notes().forEach(n -> notes.add(who + "axis " + axis.letter() + ": " + n + ".")));
            unit.notes().forEach(n -> notes.add(who + n + "."));
        }
        int more = notes.size() - MOST;
        return more <= 0 ? notes
            : Stream.concat(notes.stream().limit(MOST), Stream.of("and " + more + " more in summary.json")).toList();
    }

    /** Serial, axis, value, half interval, spread, used of read, resonances; the vector last. */
    private static List<List<String>> rows(ResonatorSensitivity unit) {
        List<List<String>> rows = new ArrayList<>();
        for (AxisSensitivity a : unit.axes().values()) {
            boolean turned = a.points().isEmpty() && a.turnOver() != null;
            String sign = a.signKnown() ? a.meanPerG() > 0 ? "+" : "" : "+-";
            rows.add(List.of(unit.serial(), a.axis().letter(), sign + number(a.meanPerG()), number(a.halfPerG()),
                number(a.spreadPerG()), turned ? "turned" : a.used() + " of " + a.points().size(), resonances(a)));
        }
        rows.add(List.of(unit.serial(), unit.whole() ? "all" : "some", number(unit.vectorPerG()), number(unit.vectorHalfPerG()), "",
            "", ""));
        return rows;
    }

    private static String number(double perG) {
        return Double.isNaN(perG) ? "-" : NumberFormat.brief(perG * 1e9, 4);
    }

    private static String resonances(AxisSensitivity a) {
        return a.resonances().stream().map(r -> QuantityText.hz(r.frequencyHz()) + (r.beyond() ? " (above the readings)"
            : (Double.isNaN(r.q()) ? ", Q not resolved" : ", Q " + NumberFormat.brief(r.q(), 2)) + (r.share() == 1 ? "" : ", share "
            + NumberFormat.brief(r.share(), 2)))).collect(Collectors.joining("; "));
    }

    private static String verdict(List<ResonatorSensitivity> units) {
        if (units.size() == 1) {
            return "Vector " + number(units.get(0).vectorPerG()) + " ppb/g, within +- " + number(units.get(0).vectorHalfPerG())
                + " ppb/g at 95 %.";
        }
        return units.size() + " resonators measured, " + units.stream().filter(ResonatorSensitivity::whole).count() + " on all three axes.";
    }
}
