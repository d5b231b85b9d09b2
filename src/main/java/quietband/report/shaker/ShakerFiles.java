package quietband.report.shaker;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.identification.shaker.AxisSensitivity;
import quietband.identification.shaker.ResonatorSensitivity;
import quietband.identification.shaker.ShakerPoint;
import quietband.identification.shaker.ShakerRules;
import quietband.identification.shaker.TipOver;
import quietband.model.Axis;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.page.PageTemplates;

/** What readings on the shaker come to: tables, a lot for {@code sort}, charts, page, summary. */
public final class ShakerFiles {

    private static final int MOST_CHARTED = 4;

    private final List<ResonatorSensitivity> units;
    private final ShakerRules rules;
    private final Provenance from;

    /** For the resonators of one run, at least one. */
    public ShakerFiles(List<ResonatorSensitivity> units, ShakerRules rules, Provenance from) {
        this.units = List.copyOf(units);
        this.rules = rules;
        this.from = from;
    }

    /** Writes all of them. */
    public void writeTo(ResultDirectory directory) {
        directory.write("sensitivity.csv", this::readings);
        directory.write("axes.csv", this::axes);
        directory.write("lot.csv", this::lot);
        List<String> svgs = new ArrayList<>();
        for (ResonatorSensitivity unit : units.subList(0, Math.min(MOST_CHARTED, units.size()))) {
            for (AxisSensitivity a : unit.axes().values()) {
                if (!a.points().isEmpty()) {
                    FrequencyChart chart = ShakerCharts.of(unit, a, units.indexOf(unit));
                    String svg = chart.svg();
                    svgs.add(svg);
                    directory.write(chart.name() + ".svg", w -> w.write(svg));
                }
            }
        }
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
        String page = PageTemplates.page(ShakerText.page(units, rules, from, svgs));
        directory.write("report.html", w -> w.write(page));
    }

    /** The summary. */
    public String json() {
        return ShakerSummary.json(units, rules, from);
    }

    /** The summary for a terminal. */
    public String text() {
        return ShakerText.of(units, rules, from);
    }

    /** Every reading of a sideband. */
    private void readings(Writer writer) throws IOException {
        CsvWriter table = new CsvWriter(writer, "serial", "axis", "frequency_hz", "peak_g", "sideband_dbc", "index_rad",
            "sensitivity_ppb_per_g",
            "fitted_ppb_per_g", "phase_deg", "mark", "line");
        for (ResonatorSensitivity unit : units) {
            for (AxisSensitivity a : unit.axes().values()) {
                for (ShakerPoint p : a.points()) {
                    (unit.serial().isEmpty() ? table.cell(Double.NaN) : table.cell(unit.serial())).cell(a.axis().letter())
                        .cell(p.reading().frequencyHz()).cell(p.reading().peakG()).cell(p.reading().sidebandDbc()).cell(p.index())
                        .cell(p.perG() * 1e9).cell(p.fittedG() * 1e9).cell(Math.toDegrees(p.reading().phase()))
                        .cell(p.mark().name().toLowerCase(Locale.ROOT)).cell(Integer.toString(p.reading().line())).end();
                }
            }
        }
    }

    private void axes(Writer writer) throws IOException {
        CsvWriter table = new CsvWriter(writer, "serial", "axis", "readings", "used", "mean_ppb_per_g", "sign_known",
            "uncertainty_ppb_per_g",
            "half_interval_ppb_per_g", "spread_ppb_per_g", "turn_over_ppb_per_g", "turn_over_uncertainty_ppb_per_g",
            "resonances_hz");
        for (ResonatorSensitivity unit : units) {
            for (AxisSensitivity a : unit.axes().values()) {
                TipOver t = a.turnOver();
                List<String> at = a.resonances().stream().map(r -> NumberFormat.json(r.frequencyHz())).toList();
                (unit.serial().isEmpty() ? table.cell(Double.NaN) : table.cell(unit.serial())).cell(a.axis().letter())
                    .cell(Integer.toString(a.points().size() + (t == null ? 0 : t.readings()))).cell(Long.toString(a.used()))
                    .cell(a.meanPerG() * 1e9).cell(a.signKnown() ? "yes" : "no").cell(a.sigmaPerG() * 1e9).cell(a.halfPerG() * 1e9)
                    .cell(a.spreadPerG() * 1e9).cell(t == null ? Double.NaN : t.perG() * 1e9)
                    .cell(t == null ? Double.NaN : t.sigmaPerG() * 1e9);
                (at.isEmpty() ? table.cell(Double.NaN) : table.cell(String.join(" ", at))).end();
            }
        }
    }

    /** The resonators with all three axes, as {@code sort} reads them. */
    private void lot(Writer writer) throws IOException {
        boolean sigma = units.stream().filter(ResonatorSensitivity::whole)
            .allMatch(u -> u.axes().values().stream().noneMatch(a -> Double.isNaN(a.sigmaPerG())));
        List<String> header = new ArrayList<>(List.of("serial"));
        Axis.ALL.forEach(a -> header.add(a.letter() + "_ppb_per_g"));
        if (sigma) {
            Axis.ALL.forEach(a -> header.add(a.letter() + "_uncertainty_ppb_per_g"));
        }
        CsvWriter table = new CsvWriter(writer, header);
        for (ResonatorSensitivity unit : units) {
            if (!unit.whole()) {
                continue;
            }
            table.cell(unit.serial().isEmpty() ? "1" : unit.serial());
            for (Axis axis : Axis.ALL) {
                table.cell(unit.axes().get(axis).meanPerG() * 1e9);
            }
            for (Axis axis : sigma ? Axis.ALL : List.<Axis>of()) {
                table.cell(unit.axes().get(axis).sigmaPerG() * 1e9);
            }
            table.end();
        }
    }
}
