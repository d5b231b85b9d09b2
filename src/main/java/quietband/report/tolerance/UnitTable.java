package quietband.report.tolerance;

import java.io.CharArrayWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.List;
import quietband.report.file.CsvWriter;
import quietband.tolerance.campaign.UnitRow;
import quietband.tolerance.judge.RequirementKind;
import quietband.tolerance.judge.UnitVerdict;

/** {@code units.csv}, some rows at a time as they come. */
public final class UnitTable {

    private static final List<String> HEADER = List.of("unit", "condition", "worst_margin_db", "frequency_hz", "axis",
        "failed_requirement");
    private final List<String> conditions;

    /** Writes the header. */
    public UnitTable(Writer writer, List<String> conditions) throws IOException {
        this.conditions = conditions;
        new CsvWriter(writer, HEADER);
    }

    /** The lines of some units, each in every condition; units count from 1. Any thread may ask. */
    public CharArrayWriter made(List<UnitRow> units) {
        CharArrayWriter lines = new CharArrayWriter(64 * units.size() * conditions.size());
        CsvWriter table = new CsvWriter(lines, HEADER.size());
        try {
            for (UnitRow unit : units) {
                for (int c = 0; c < conditions.size(); c++) {
                    UnitVerdict v = unit.verdicts().get(c);
                    table.whole(unit.index() + 1).cell(conditions.get(c)).cell(v.marginDb()).cell(v.frequencyHz())
                        .cell(v.axis()).cell(String.join(" ", v.failures().stream().map(RequirementKind::key).toList())).end();
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return lines;
    }
}
