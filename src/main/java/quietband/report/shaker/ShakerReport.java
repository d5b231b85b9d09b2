package quietband.report.shaker;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import quietband.identification.shaker.AxisSensitivity;
import quietband.identification.shaker.ResonatorSensitivity;
import quietband.identification.shaker.ShakerPoint;
import quietband.identification.shaker.ShakerRules;
import quietband.identification.shaker.TipOver;
import quietband.model.Axis;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.page.Report;

/** What readings on the shaker come to: tables, a lot for {@code sort}, charts, page, summary with the names that others rely on. */
public final class ShakerReport {

    private static final int MOST_CHARTED = 4;

    private ShakerReport() { }

    /**
     * The report.
     *
     * @param units the resonators of one run, at least one
     */
    public static Report of(List<ResonatorSensitivity> units, ShakerRules rules, Provenance from) {
        Report report = new Report("Resonators on the shaker, " + from.input(), from).fromReadings();
        report.table("sensitivity.csv", List.of("serial", "axis", "frequency_hz", "peak_g", "sideband_dbc", "index_rad",
            "sensitivity_ppb_per_g", "fitted_ppb_per_g", "phase_deg", "mark", "line"), table -> readings(table, units));
        report.table("axes.csv", List.of("serial", "axis", "readings", "used", "mean_ppb_per_g", "sign_known", "uncertainty_ppb_per_g",
            "half_interval_ppb_per_g", "spread_ppb_per_g", "turn_over_ppb_per_g", "turn_over_uncertainty_ppb_per_g", "resonances_hz"),
            table -> axes(table, units));
        lot(report, units.stream().filter(ResonatorSensitivity::whole).toList());
        report.summary(json -> {
            json.field("carrier_hz", rules.carrierHz()).field("multiplier", rules.multiplier()).field("count", units.size());
            if (units.size() == 1) {
                unit(json, units.get(0));
            }
            json.objects("resonators", units, u -> {
                json.field("serial", u.serial());
                unit(json, u);
            });
        });
        List<FrequencyChart> charts = new ArrayList<>();
        for (ResonatorSensitivity unit : units.subList(0, Math.min(MOST_CHARTED, units.size()))) {
            unit.axes().values().stream().filter(a -> !a.points().isEmpty())
                .forEach(a -> charts.add(ShakerCharts.of(unit, a, units.indexOf(unit))));
        }
        ShakerText.say(report, units, rules, from, charts);
        return report;
    }

    /** Every reading of a sideband. */
    private static void readings(CsvWriter table, List<ResonatorSensitivity> units) throws IOException {
        for (ResonatorSensitivity unit : units) {
            for (AxisSensitivity a : unit.axes().values()) {
                for (ShakerPoint p : a.points()) {
                    table.known(unit.serial()).cell(a.axis().letter()).cell(p.reading().frequencyHz()).cell(p.reading().peakG())
                        .cell(p.reading().sidebandDbc()).cell(p.index()).cell(p.perG() * 1e9).cell(p.fittedG() * 1e9)
                        .cell(Math.toDegrees(p.reading().phase())).cell(p.mark().name().toLowerCase(Locale.ROOT))
                        .whole(p.reading().line()).end();
                }
            }
        }
    }

    private static void axes(CsvWriter table, List<ResonatorSensitivity> units) throws IOException {
        for (ResonatorSensitivity unit : units) {
            for (AxisSensitivity a : unit.axes().values()) {
                TipOver t = a.turnOver();
                table.known(unit.serial()).cell(a.axis().letter()).whole(a.points().size() + (t == null ? 0 : t.readings()))
                    .whole(a.used()).cell(a.meanPerG() * 1e9).yes(a.signKnown()).cell(a.sigmaPerG() * 1e9).cell(a.halfPerG() * 1e9)
                    .cell(a.spreadPerG() * 1e9).cell(t == null ? Double.NaN : t.perG() * 1e9)
                    .cell(t == null ? Double.NaN : t.sigmaPerG() * 1e9)
                    .known(a.resonances().stream().map(r -> NumberFormat.json(r.frequencyHz())).collect(Collectors.joining(" "))).end();
            }
        }
    }

    /** The resonators with all three axes, as {@code sort} reads them. */
    private static void lot(Report report, List<ResonatorSensitivity> whole) {
        boolean sigma = whole.stream().allMatch(u -> u.axes().values().stream().noneMatch(a -> Double.isNaN(a.sigmaPerG())));
        report.table("lot.csv", "serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g"
            + (sigma ? ",x_uncertainty_ppb_per_g,y_uncertainty_ppb_per_g,z_uncertainty_ppb_per_g" : ""), whole, (table, unit) -> {
                table.cell(unit.serial().isEmpty() ? "1" : unit.serial());
                Axis.ALL.forEach(a -> table.cell(unit.axes().get(a).meanPerG() * 1e9));
                if (sigma) {
                    Axis.ALL.forEach(a -> table.cell(unit.axes().get(a).sigmaPerG() * 1e9));
                }
            });
    }

    /** One resonator's figures; at the top level too when there is only one. */
    private static void unit(Json json, ResonatorSensitivity u) {
        json.field("vector_ppb_per_g", u.vectorPerG() * 1e9).field("vector_uncertainty_ppb_per_g", u.vectorSigmaPerG() * 1e9)
            .field("vector_half_interval_ppb_per_g", u.vectorHalfPerG() * 1e9).field("whole", u.whole());
        json.object("axes", () -> u.axes().forEach((axis, a) -> json.object(axis.letter(), () -> axis(json, a))));
        json.items("notes", u.notes());
    }

    private static void axis(Json json, AxisSensitivity a) {
        json.field("mean_ppb_per_g", a.meanPerG() * 1e9).field("sign_known", a.signKnown())
            .field("uncertainty_ppb_per_g", a.sigmaPerG() * 1e9).field("half_interval_ppb_per_g", a.halfPerG() * 1e9)
            .field("spread_ppb_per_g", a.spreadPerG() * 1e9).field("readings", a.points().size()).field("used", a.used());
        TipOver t = a.turnOver();
        if (t != null) {
            json.object("turn_over", () -> json.field("readings", t.readings()).field("sensitivity_ppb_per_g", t.perG() * 1e9)
                .field("uncertainty_ppb_per_g", t.sigmaPerG() * 1e9).field("drift_ppb_per_hour", t.driftPerS() * 3600e9));
        }
        json.objects("resonances", a.resonances(), r -> json.field("frequency_hz", r.frequencyHz()).field("uncertainty_hz", r.sigmaHz())
            .field("q", r.q()).field("share", r.share()).field("above_readings", r.beyond()));
        json.items("notes", a.notes());
    }
}
