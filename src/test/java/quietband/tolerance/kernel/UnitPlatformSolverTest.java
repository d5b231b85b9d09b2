package quietband.tolerance.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.demand.RequirementResult;
import quietband.demand.ResidualPoint;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.model.quantity.Quantities;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;
import quietband.tolerance.draw.ScatterModels;
import quietband.tolerance.judge.MonteCarloPlan;
import quietband.tolerance.judge.UnitJudge;
import quietband.tolerance.judge.UnitVerdict;

/** The fast judge against the exact assessment, unit by unit. */
class UnitPlatformSolverTest {

    private static final String LIGHT = "platform:\n  mass: 200 g\n  size: {x: 60 mm, y: 60 mm, z: 25 mm}\n"
        + "  centre_of_gravity: {x: 1 mm, z: 2 mm}\n"
        + "  springs:\n    - {name: s, at: [{x: 24 mm, y: 24 mm}, {x: -24 mm, y: 24 mm}, {x: -24 mm, y: -24 mm}, {x: 24 mm, y: -24 mm}],"
        + " stiffness: 12 N/mm, damping: 0.3 N*s/m, relaxation: {stiffness_ratio: 0.5, corner: 100 Hz},"
        + " orientation: {axis: {x: 1, y: 2, z: 0.5}, angle: 20 deg}}\n"
        + "requirement:\n  by: vector\n  residual: [{frequency: 10 Hz, limit: 1 ppb/g}, {frequency: 2 kHz, limit: 0.1 ppb/g}]\n"
        + "tolerances:\n  - {of: platform.springs.stiffness, scale: 5 %}\n  - {of: platform.mass, scale: 2 %}\n"
        + "  - {of: platform.springs.at, add: 0.2 mm}\n  - {of: cancellation.error.gain, add: 1 %}\n";

    @ParameterizedTest
    @ValueSource(strings = {"ridge", "light"})
    void margins_agree_with_the_assessment(String which) {
        Design design = which.equals("ridge") ? ModelFile.read(Path.of("models/ridge-relay.yaml")).design()
            : ScatterModels.design(LIGHT);
        MonteCarloPlan plan = new MonteCarloPlan(design, 11);
        List<UnitJudge> judges = plan.judges();
        for (int u = 0; u < 6; u++) {
            Quantities drawn = plan.draw(plan.scatter(), u, 0);
            for (int c = 0; c < judges.size(); c++) {
                Design unit = plan.unit(c, drawn);
                UnitVerdict fast = judges.get(c).judge(unit);
                Assessment exact = Assessor.assess(unit);
                ResidualPoint worst = exact.verdict(exact.fullest()).worst();
                // a parabola through three points of a grid with eight or nine in each half-power width: 0.001 dB
                assertThat(fast.marginDb()).isCloseTo(worst.marginDb(), within(0.001));
                assertThat(fast.axis()).isEqualTo(worst.axis());
                assertThat(fast.met()).isEqualTo(exact.requirements().stream().allMatch(RequirementResult::met));
            }
        }
    }
}
