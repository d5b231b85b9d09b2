package quietband.tolerance.campaign;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Cells of powers. */
class LevelCountsTest {

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
