package quietband.tolerance.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.demand.RequirementResult;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.response.verdict.Assessor;

/** What units are found to be, against what assess makes of each of them. */
class UnitJudgeTest {

    // Setup:   units of models with broad resonances, with one narrow condition, and with surges of a few thousandths of a hertz:
    //          between those a curve has neighbours that are a thousand times lower (seed 1, unit 1308 of trial-a at 202 Hz)
    // Result:  each worst point is found, and none where nothing is, within 0.002 dB: what the fast search is said to be good to
    @ParameterizedTest
    @CsvSource({"ridge-relay.yaml, 3, 0", "platform-only.yaml, 3, 0", "trial-a-cured.yaml, 3, 0", "trial-a.yaml, 1, 1303",
        "trial-a.yaml, 7, 0"})
    void margins_are_those_of_assess(String model, long seed, long first) {
        MonteCarloPlan plan = new MonteCarloPlan(ModelFile.read(Path.of("models", model)).design(), seed);
        for (int c = 0; c < plan.conditions().size(); c++) {
            UnitJudge judge = plan.judges().get(c);
            for (long u = first; u < first + 6; u++) {
                Design unit = plan.unit(c, plan.draw(plan.scatter(), u, 0));
                UnitVerdict verdict = judge.judge(unit);
                RequirementResult assessed = Assessor.assess(unit).requirements().stream().filter(r -> r.name().equals("residual"))
                    .findFirst().orElseThrow();
                assertThat(verdict.marginDb()).as("unit %d", u).isCloseTo(assessed.marginDb(), within(0.002));
                // a flat maximum has its place less well than its size
                assertThat(verdict.frequencyHz()).as("place of unit %d", u)
                    .isCloseTo(assessed.frequencyHz(), within(0.01 * assessed.frequencyHz()));
            }
        }
    }
}
