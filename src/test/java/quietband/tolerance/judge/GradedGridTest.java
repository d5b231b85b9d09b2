package quietband.tolerance.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.platform.Resonances;
import quietband.tolerance.kernel.UnitResponse;

/** Search grids that are coarse away from resonances. */
class GradedGridTest {

    private static MonteCarloPlan plan(String model, long seed) {
        return new MonteCarloPlan(ModelFile.read(Path.of("models", model)).design(), seed);
    }

    @Test
    void steps_grow_in_proportion_to_the_distance_from_a_peaks_poles() {
        double[] grid = GradedGrid.grid(List.of(new Resonances.Peak(100, 20)), 10, 2000, true);
        assertThat(GradedGrid.grid(List.of(new Resonances.Peak(100, 20)), 10, 2000, false)).hasSizeLessThan(grid.length);
        assertThat(grid[0]).isEqualTo(10);
        assertThat(grid[grid.length - 1]).isEqualTo(2000);
        for (int i = 1; i < grid.length; i++) {
            double middle = Math.sqrt(grid[i] * grid[i - 1]);
            double away = Math.max(0, Math.abs(Math.log(middle / 100)) - 0.1);
            double wanted = Math.min(Math.log(10) / 18, 0.2 / 9 * Math.sqrt(1 + Math.pow(away / 0.1, 2)));
            // evened out so that a whole number of steps fits, and each step reaches over what changes within it
            assertThat(Math.log(grid[i] / grid[i - 1])).isCloseTo(wanted, within(0.1 * wanted));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"ridge-relay.yaml", "platform-only.yaml"})
    void margins_of_units_are_those_of_the_exact_search(String model) {
        // not the seed's own first units, on which the plan tried it
        MonteCarloPlan plan = plan(model, 11);
        for (int c = 0; c < plan.conditions().size(); c++) {
            JudgedCondition condition = plan.conditions().get(c);
            UnitResponse response = new UnitResponse(condition.base, condition.varied, condition.base.requirement().toHz());
            UnitWorstPoint search = new UnitWorstPoint(condition, 0);
            assertThat(condition.nodes.size()).as("nodes").isLessThan(90);
            for (int u = 100; u < 110; u++) {
                Design unit = plan.unit(c, plan.draw(plan.scatter(), u, 0));
                response.fill(unit);
                search.fill(unit, response);
                search.run(response, condition.nodes);
                double exact = ExactMargin.marginDb(unit, search.residual.curve, search.residual.leftHz(), search.residual.atHz(),
                    search.residual.rightHz());
                assertThat(-10 * Math.log10(search.residual.value)).isCloseTo(exact, within(0.002));
            }
        }
    }
}
