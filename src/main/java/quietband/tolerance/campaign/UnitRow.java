package quietband.tolerance.campaign;

import java.util.List;
import quietband.tolerance.judge.UnitVerdict;

/**
 * One unit.
 *
 * @param index     its number, from 0
 * @param attempts  how many impossible draws came before it
 * @param verdicts  per condition, the nominal first
 * @param evenlyDb  margin of the nominal condition on the table's points alone, dB; NaN without a residual limit
 */
public record UnitRow(long index, int attempts, List<UnitVerdict> verdicts, double evenlyDb) {

    public UnitRow {
        verdicts = List.copyOf(verdicts);
    }

    /** Whether it meets in every condition. */
    public boolean metInAll() {
        return verdicts.stream().allMatch(UnitVerdict::met);
    }
}
