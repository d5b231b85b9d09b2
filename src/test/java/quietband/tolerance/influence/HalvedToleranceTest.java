package quietband.tolerance.influence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import quietband.model.edit.ModelFile;
import quietband.spectrum.LogGrid;
import quietband.tolerance.campaign.FirstUnits;
import quietband.tolerance.campaign.MonteCarlo;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.draw.ToleranceDraws;
import quietband.tolerance.judge.MonteCarloPlan;
import quietband.tolerance.judge.UnitJudge;
import quietband.tolerance.judge.UnitVerdict;

/** The yield with one tolerance halved, from a part of the units. */
class HalvedToleranceTest {

    private static final int UNITS = 3000;

    // Result:  the change found on the chosen units is that of all, counted one by one in two campaigns on the same draws
    // Note:    the far units that change sides stand for many: none does here, so nothing is lost
    @Test
    void the_change_on_the_chosen_units_is_that_on_all() {
        MonteCarloPlan plan = new MonteCarloPlan(ModelFile.read(Path.of("models/ridge-relay.yaml")).design(), 5);
        double[] table = LogGrid.between(10, 10, 2000);
        MonteCarloResult outcome = new MonteCarlo(plan, table, 2).run(UNITS, () -> false, n -> { });
        HalvedTolerance halving = new HalvedTolerance(plan, outcome.first(), UNITS, 2);
        UnitJudge judge = plan.nominalJudge(true);
        for (int e : new int[] {2, 4}) {
            ToleranceDraws halved = plan.scatter().halved(e);
            double gained = 0;
            for (int u = 0; u < UNITS; u++) {
                boolean after = judge.judge(plan.unit(0, plan.draw(halved, u, 0))).met();
                gained += (after ? 1.0 : 0) - (outcome.first().met(u) ? 1 : 0);
            }
            // without any change nothing is gained
            assertThat(halving.gained(List.of(halved, plan.scatter()))).containsExactly(new double[] {gained / UNITS, 0}, within(0.001));
        }
        // two scatters twice
        assertThat(halving.judged()).isBetween(4L * UNITS / 10, 4L * UNITS / 4);
    }

    @Test
    void margins_of_the_first_units_are_kept() {
        FirstUnits first = new FirstUnits();
        for (int u = 0; u < FirstUnits.MOST + 5; u++) {
            first.add(new UnitVerdict(u % 100, 50, "x", u % 3 == 0 ? 1 : 0));
        }
        assertThat(first.met(0)).isFalse();
        assertThat(first.met(FirstUnits.MOST - 2)).isTrue();
        assertThat(first.marginDb(99_999)).isEqualTo(99);
    }
}
