package quietband.tolerance.judge;

import java.util.Arrays;
import java.util.List;

/**
 * One unit in one condition.
 *
 * @param marginDb    margin of the residual at its worst point, dB, at most 300; without a residual limit minus the level of the worst
 *                    residual over 1 ppb/g, dB
 * @param frequencyHz of the worst point
 * @param axis        x, y, z or vector
 * @param failed      bits of what is asked and not met
 */
public record UnitVerdict(double marginDb, double frequencyHz, String axis, int failed) {

    /** Whether every requirement is met. */
    public boolean met() {
        return failed == 0;
    }

    /** What failed, in the order of the requirements. */
    public List<RequirementKind> failures() {
        if (failed == 0) {
            return List.of();
        }
        return Arrays.stream(RequirementKind.values()).filter(a -> (failed & a.bit()) != 0).toList();
    }
}
