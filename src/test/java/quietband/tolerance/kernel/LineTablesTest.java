package quietband.tolerance.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.edit.ModelFile;
import quietband.spectrum.LogGrid;
import quietband.tolerance.campaign.LevelCounts;
import quietband.tolerance.judge.JudgedCondition;
import quietband.tolerance.judge.MonteCarloPlan;

/** What units share against each unit by itself. */
class LineTablesTest {

    @Test
    void units_around_the_designs_springs_are_as_units_around_their_own() {
        Design design = ModelFile.read(Path.of("models/ridge-relay.yaml")).design();
        MonteCarloPlan plan = new MonteCarloPlan(design, 3);
        JudgedCondition condition = plan.conditions().get(0);
        double[] f = LogGrid.between(200, 10, 2000);
        BlockedGrid tabled = new BlockedGrid(f, design, condition.lines);
        BlockedGrid plain = new BlockedGrid(f, design);
        UnitResponse around = new UnitResponse(design, condition.varied, 2000, condition.lines);
        UnitResponse own = new UnitResponse(design, condition.varied, 2000, LineTables.NONE);
        assertThat(condition.lines.holds(0)).isTrue();
        for (int u = 0; u < 20; u++) {
            Design unit = plan.unit(0, plan.draw(plan.scatter(), u, 0));
            around.fill(unit);
            own.fill(unit);
            for (int b = 0; b < plain.blocks.length; b++) {
                around.residual(tabled.blocks[b], true);
                own.residual(plain.blocks[b], true);
                for (Stack stack : Stack.values()) {
                    for (int j = 0; j < 3; j++) {
                        for (int t = 0; t < plain.blocks[b].n; t++) {
                            double p = own.power[stack.ordinal()][j][t];
                            // orders below 1e-6 of a spring's own force are left out by either: 3e-5 is 0.0001 dB
                            assertThat(around.power[stack.ordinal()][j][t]).isCloseTo(p, within(3e-5 * p));
                        }
                    }
                }
            }
        }
    }

    @Test
    void a_power_is_counted_between_the_edges_of_its_cell() {
        for (int cell : new int[] {0, 1, 47, 127}) {
            for (int octave : new int[] {-100, -60, -31, 0}) {
                double low = StrictMath.pow(2, octave) * (1 + cell / 128.0);
                double high = StrictMath.pow(2, octave) * (1 + (cell + 1) / 128.0);
                int number = 128 * (octave + 100) + cell;
                assertThat((int) LevelCounts.cell(low * (1 + 1e-12))).isEqualTo(number);
                assertThat((int) LevelCounts.cell(high * (1 - 1e-12))).isEqualTo(number);
            }
        }
        assertThat((int) LevelCounts.cell(0)).isZero();
        assertThat((int) LevelCounts.cell(StrictMath.pow(2, -101))).isZero();
        assertThat((int) LevelCounts.cell(StrictMath.pow(2, 21))).isEqualTo(128 * 119 + 127);
    }
}
