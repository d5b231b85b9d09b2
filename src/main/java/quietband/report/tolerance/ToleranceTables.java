package quietband.report.tolerance;

import java.io.CharArrayWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.List;
import quietband.report.file.CsvWriter;
import quietband.tolerance.campaign.UnitRow;
import quietband.tolerance.influence.SobolIndices;
import quietband.tolerance.influence.ToleranceInfluence;
import quietband.tolerance.judge.RequirementKind;
import quietband.tolerance.judge.UnitVerdict;

/** CSV tables of a Monte Carlo. */
public final class ToleranceTables {

    private ToleranceTables() { }

    /** The table of units, some rows at a time as they come. */
    public static final class Units {

        private final List<String> conditions;
        private final int columns;

        /** Writes the header. */
        public Units(Writer writer, List<String> conditions) throws IOException {
            this.conditions = conditions;
            List<String> header = List.of("unit", "condition", "worst_margin_db", "frequency_hz", "axis", "failed_requirement");
            columns = header.size();
            new CsvWriter(writer, header);
        }

        /** The lines of some units, each in every condition; units count from 1. Any thread may ask. */
        public CharArrayWriter made(List<UnitRow> units) {
            CharArrayWriter lines = new CharArrayWriter(64 * units.size() * conditions.size());
            CsvWriter table = new CsvWriter(lines, columns);
            try {
                for (UnitRow unit : units) {
                    row(table, unit);
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            return lines;
        }

        private void row(CsvWriter table, UnitRow row) throws IOException {
            for (int c = 0; c < conditions.size(); c++) {
                UnitVerdict v = row.verdicts().get(c);
                table.cell(Long.toString(row.index() + 1)).cell(conditions.get(c)).cell(v.marginDb()).cell(v.frequencyHz())
                    .cell(v.axis()).cell(String.join(" ", v.failures().stream().map(RequirementKind::key).toList())).end();
            }
        }
    }

    /** What each tolerance does. */
    static void influence(Writer writer, ToleranceInfluence influence) throws IOException {
        CsvWriter table = new CsvWriter(writer, "tolerance", "group", "first_order", "first_order_low", "first_order_high", "total",
            "total_low", "total_high", "rank_correlation", "yield_from", "yield_halved");
        for (ToleranceInfluence.Line l : influence.lines()) {
            SobolIndices.Index s = l.sobol();
            table.cell(l.name()).cell(String.join(" + ", l.group())).cell(s.first()).cell(s.firstLow()).cell(s.firstHigh())
                .cell(s.total()).cell(s.totalLow()).cell(s.totalHigh()).cell(l.rank()).cell(l.from()).cell(l.to()).end();
        }
    }
}
