package quietband.response;

import static org.assertj.core.api.Assertions.assertThat;

import org.hipparchus.complex.Complex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.spectrum.LogGrid;

/** Twelve designs nobody tuned: the residual of every stack against a second writing of the equations. */
class IndependentResidualTest {

    // Note: rounding through two solvers of 6 x 6; resonances of a damping ratio under 1 % cost two digits, 1e-9 leaves five to spare
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void the_residual_of_a_random_design_is_that_of_its_equations(int seed) {
        RandomDesign drawn = new RandomDesign(seed);
        Design design = Models.of(drawn.text());
        IndependentResidual other = new IndependentResidual(drawn);
        ResidualResponse response = new ResidualResponse(design);
        double[] re = new double[3];
        double[] im = new double[3];
        for (double f : LogGrid.between(40, 3, 6000)) {
            response.at(f);
            for (Stack stack : Stack.values()) {
                response.residual(stack, re, im);
                Complex[] y = other.at(f, stack.sprung(), stack.corrected());
                for (int j = 0; j < 3; j++) {
                    assertThat(y[j].subtract(new Complex(re[j], im[j])).norm() / other.scale())
                        .as("seed %d, %s at %s Hz, axis %d: %s", seed, stack, f, j, y[j]).isLessThan(1e-9);
                }
            }
        }
    }
}
