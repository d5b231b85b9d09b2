package quietband.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.linear.MatrixUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MatrixExponentialTest {

    // Ref:     the general library's exponential by Pade approximants, another road
    // Note:    1e-13 of the largest entry: squaring doubles roundings, ten times at most here
    @ParameterizedTest
    @ValueSource(doubles = {1e-6, 0.02, 0.4, 3, 40})
    void it_is_that_of_a_general_library(double size) {
        Random random = new Random(7);
        double[][] a = new double[14][14];
        for (double[] row : a) {
            for (int j = 0; j < row.length; j++) {
                row[j] = size * (random.nextDouble() - 0.5);
            }
        }
        double[][] expected = MatrixUtils.matrixExponential(MatrixUtils.createRealMatrix(a)).getData();
        double[][] e = MatrixExponential.of(a);
        double largest = MatrixUtils.createRealMatrix(expected).getNorm1();
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < a.length; j++) {
                assertThat(e[i][j]).isCloseTo(expected[i][j], within(1e-13 * largest));
            }
        }
    }

    // Result:  exp of a turn by phi is the cosine and sine of phi, closed form
    @Test
    void a_turn_gives_cosine_and_sine() {
        double phi = 2.3;
        double[][] e = MatrixExponential.of(new double[][] {{0, -phi}, {phi, 0}});
        assertThat(e[0][0]).isCloseTo(Math.cos(phi), within(1e-14));
        assertThat(e[1][0]).isCloseTo(Math.sin(phi), within(1e-14));
        assertThat(e[0][1]).isCloseTo(-Math.sin(phi), within(1e-14));
    }
}
