package quietband.report.lot;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import quietband.lot.BuildCount;
import quietband.lot.MeasuredLot;
import quietband.lot.SortRule;
import quietband.lot.SortedLot;
import quietband.report.file.CsvWriter;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.page.PageTemplates;

/** What a sorted lot writes: the units with their class, the accepted ones as a lot, tables, page, summary. */
public final class LotFiles {

    private static final String[] AXES = {"x", "y", "z"};

    private final SortedLot sorted;
    private final Provenance from;
    private final String[] classNames;

    /** For one sorted lot. */
    public LotFiles(SortedLot sorted, Provenance from) {
        this.sorted = sorted;
        this.from = from;
        this.classNames = IntStream.rangeClosed(0, sorted.rule().edgesPpbPerG().length)
            .mapToObj(k -> LotText.className(sorted, k)).toArray(String[]::new);
    }

    /** Writes all of them. */
    public void writeTo(ResultDirectory directory) {
        directory.write("sorted.csv", this::units);
        directory.write("accepted.csv", this::acceptedLot);
        directory.write("classes.csv", this::classes);
        directory.write("limits.csv", w -> LotLimits.write(w, sorted));
        if (!sorted.lot().bad().isEmpty()) {
            directory.write("bad_rows.csv", this::badRows);
        }
        if (sorted.within().isPresent()) {
            directory.write("guard.csv", this::guard);
        }
        String chart = LotBars.lengths(sorted);
        directory.write("chart-lengths.svg", w -> w.write(chart));
        String summary = json();
        directory.write("summary.json", w -> w.write(summary));
        String page = PageTemplates.page(LotText.page(sorted, from, chart));
        directory.write("report.html", w -> w.write(page));
    }

    /** The summary. */
    public String json() {
        return LotSummary.json(sorted, from);
    }

    /** The summary for a terminal. */
    public String text() {
        return LotText.of(sorted, from);
    }

    /** Every row of the file in its order, the bad ones among them. */
    private void units(Writer writer) throws IOException {
        CsvWriter table = new CsvWriter(writer, "serial", "x_ppb_per_g", "y_ppb_per_g", "z_ppb_per_g", "vector_ppb_per_g", "worst_axis",
            "worst_axis_ppb_per_g", "class", "accepted", "chance_within_limit", "line", "note");
        List<MeasuredLot.BadRow> bad = sorted.lot().bad();
        int[] lines = sorted.lot().lines();
        int unit = 0;
        int wrong = 0;
        while (unit < lines.length || wrong < bad.size()) {
            boolean badNext = wrong < bad.size() && (unit == lines.length || bad.get(wrong).line() <= lines[unit]);
            boolean both = badNext && unit < lines.length && bad.get(wrong).line() == lines[unit];
            if (badNext && !both) {
                badUnit(table, bad.get(wrong++));
            } else {
                unit(table, unit++, both ? bad.get(wrong++).reason() : "");
            }
        }
    }

    private void unit(CsvWriter table, int i, String note) throws IOException {
        MeasuredLot lot = sorted.lot();
        int worst = lot.worstAxis(i);
        table.cell(lot.serials()[i]);
        for (int axis = 0; axis < 3; axis++) {
            table.cell(lot.valuePpbPerG()[axis][i]);
        }
        table.cell(lot.vector(i)).cell(AXES[worst]).cell(Math.abs(lot.valuePpbPerG()[worst][i])).cell(classNames[sorted.classOf()[i]])
            .cell(sorted.accepted()[i] ? "yes" : "no")
            .cell(sorted.within().map(w -> w[i]).orElse(Double.NaN)).cell(Integer.toString(lot.lines()[i]));
        (note.isEmpty() ? table.cell(Double.NaN) : table.cell(note)).end();
    }

    private void badUnit(CsvWriter table, MeasuredLot.BadRow row) throws IOException {
        (row.serial().isEmpty() ? table.cell(Double.NaN) : table.cell(row.serial())).cell(Double.NaN).cell(Double.NaN)
            .cell(Double.NaN).cell(Double.NaN).cell(Double.NaN).cell(Double.NaN)
            .cell(sorted.refused() > 0 ? "refused" : "unjudged").cell("no").cell(Double.NaN).cell(Integer.toString(row.line()))
            .cell(row.reason()).end();
    }

    private void acceptedLot(Writer writer) throws IOException {
        MeasuredLot lot = sorted.lot();
        CsvWriter table = new CsvWriter(writer, "serial", "x_ppb_per_g", "y_ppb_per_g", "z_ppb_per_g");
        for (int i = 0; i < lot.size(); i++) {
            if (sorted.accepted()[i]) {
                table.cell(lot.serials()[i]).cell(lot.valuePpbPerG()[0][i]).cell(lot.valuePpbPerG()[1][i])
                    .cell(lot.valuePpbPerG()[2][i]).end();
            }
        }
    }

    private void classes(Writer writer) throws IOException {
        CsvWriter table = new CsvWriter(writer, "class", "edge_ppb_per_g", "units", "share_up_to", "low", "high", "law_share_up_to",
            "law_standard_error", "built_per_good", "law_built_per_good", "units_to_build", "units_to_build_cautious");
        SortRule rule = sorted.rule();
        int k = 0;
        for (SortedLot.Edge e : sorted.edges()) {
            table.cell(classNames[k++]).cell(e.edgePpbPerG()).cell(Long.toString(e.inClass()))
                .cell(e.share().estimate()).cell(e.share().low()).cell(e.share().high()).cell(e.lawShare()).cell(e.lawError())
                .cell(e.builtPerGood()).cell(1 / e.lawShare());
            for (double share : new double[] {e.share().estimate(), e.share().atLeast()}) {
                long n = BuildCount.of(rule.wanted(), share, rule.confidence());
                table.cell(n < 0 ? Double.NaN : n);
            }
            table.end();
        }
    }

    private void badRows(Writer writer) throws IOException {
        CsvWriter table = new CsvWriter(writer, "line", "serial", "reason", "treated_as");
        for (MeasuredLot.BadRow b : sorted.lot().bad()) {
            table.cell(Integer.toString(b.line()));
            (b.serial().isEmpty() ? table.cell(Double.NaN) : table.cell(b.serial())).cell(b.reason())
                .cell(sorted.refused() > 0 ? "refused" : b.usable() ? "judged" : "unjudged").end();
        }
    }

    private void guard(Writer writer) throws IOException {
        CsvWriter table = new CsvWriter(writer, "guard_ppb_per_g", "accepted_share", "accepted_bad_share", "refused_good_share");
        for (double g : guards(sorted)) {
            SortedLot.Risks r = sorted.risksWithGuard(g);
            table.cell(g).cell(sorted.shareWithin(sorted.rule().limitPpbPerG() - g).estimate()).cell(r.acceptedBad())
                .cell(r.refusedGood()).end();
        }
    }

    /** Guard bands worth a look: none to three times the median uncertainty, ppb/g. */
    static List<Double> guards(SortedLot sorted) {
        Optional<double[][]> sigma = sorted.lot().sigmaPpbPerG();
        List<Double> guards = new ArrayList<>();
        if (sigma.isPresent()) {
            double[] s = sigma.get()[0].clone();
            java.util.Arrays.sort(s);
            for (int k = 0; k <= 12; k++) {
                double g = 0.25 * k * s[s.length / 2];
                if (g < sorted.rule().limitPpbPerG()) {
                    guards.add(g);
                }
            }
        }
        return guards;
    }
}
