package quietband.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import quietband.tolerance.kernel.PeerWork;

class PeerWorkTest {

    @Test
    void the_mean_worst_residual_is_that_of_an_independent_program() {
        // Result: 0.3231 ppb/g over 20,000 units, from a C program with its own generator that does the same work
        // five standard errors of 4000 units with a spread of some 0.03 ppb/g, and the rounding of the figure: 0.0025
        assertThat(new PeerWork().meanPpb(4000)).isCloseTo(0.3231, within(0.0025));
    }
}
