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
import quietband.model.quantity.Quantities;
import quietband.platform.Resonances;
import quietband.spectrum.LogGrid;
import quietband.tolerance.kernel.BlockedGrid;
import quietband.tolerance.kernel.UnitResponse;

/** Search grids that are coarse away from resonances, and tables that follow from them. */
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
            UnitResponse response = new UnitResponse(condition.base, condition.varied, condition.base.requirement().toHz(),
                condition.lines);
            UnitWorstPoint search = new UnitWorstPoint(condition, 0);
            assertThat(condition.nodes.size()).as("nodes").isLessThan(90);
            for (int u = 100; u < 110; u++) {
                Design unit = plan.unit(c, plan.draw(plan.scatter(), u, 0));
                response.fill(unit);
                search.fill(unit, response);
                search.run(response, condition.nodes, null);
                double exact = ExactMargin.marginDb(unit, search.residual.curve, search.residual.leftHz(), search.residual.atHz(),
                    search.residual.rightHz());
                assertThat(-10 * Math.log10(search.residual.value)).isCloseTo(exact, within(0.002));
            }
        }
    }

    @Test
    void a_table_that_follows_from_the_search_is_the_one_that_is_solved_for() {
        MonteCarloPlan plan = plan("ridge-relay.yaml", 11);
        BlockedGrid table = new BlockedGrid(LogGrid.between(300, 12, 1900), plan.nominal(), plan.conditions().get(0).lines);
        Between between = Between.of(plan, table);
        assertThat(between).isNotNull();
        UnitJudge judge = plan.nominalJudge(false);
        judge.keep(plan.conditions().get(0).nodes.size());
        for (int u = 100; u < 105; u++) {
            Quantities drawn = plan.draw(plan.scatter(), u, 0);
            judge.margin(plan.unit(0, drawn));
            double[][] solved = new double[4][table.size()];
            judge.table(table, (b, at, power) -> worst(power, solved, at, b.n));
            judge.table(between, (b, at, power) -> {
                double[][] followed = new double[4][table.size()];
                worst(power, followed, at, b.n);
                for (int s = 0; s < 4; s++) {
                    for (int t = at; t < at + b.n; t++) {
                        // 0.004 dB of the worst axis, which is what is counted
                        assertThat(followed[s][t]).isCloseTo(solved[s][t], within(1e-3 * solved[s][t]));
                    }
                }
            });
        }
    }

    private static void worst(double[][][] power, double[][] into, int at, int n) {
        for (int s = 0; s < 4; s++) {
            for (int t = 0; t < n; t++) {
                into[s][at + t] = Math.max(power[s][0][t], Math.max(power[s][1][t], power[s][2][t]));
            }
        }
    }

    @Test
    void narrow_resonances_are_searched_and_tabled_frequency_by_frequency() {
        MonteCarloPlan plan = plan("trial-a.yaml", 1);
        assertThat(plan.conditions().get(0).seeded).isTrue();
        assertThat(Between.of(plan, new BlockedGrid(LogGrid.between(50, 10, 2000), plan.nominal(), plan.conditions()
            .get(0).lines))).isNull();
        // frequencies beyond the search are solved for, too
        MonteCarloPlan main = plan("ridge-relay.yaml", 1);
        assertThat(Between.of(main, new BlockedGrid(new double[] {5, 100}, main.nominal(), main.conditions().get(0).lines))).isNull();
    }
}
