package quietband.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;

class NormalCurveTest {

    @Test
    void both_directions_agree_with_an_independent_implementation() {
        NormalDistribution other = new NormalDistribution();
        for (double z = -8; z <= 8; z += 0.0371) {
            double p = other.cumulativeProbability(z);
            // both claim some 1e-15; Hipparchus' continued fraction loses a few digits in the tail
            assertThat(NormalCurve.below(z) / p).isCloseTo(1, within(1e-11));
            if (z < 5) {
                // above that 1 - p has too few digits left
                assertThat(NormalCurve.quantile(NormalCurve.below(z))).isCloseTo(z, within(1e-8));
            }
        }
    }

    @Test
    void the_ends_are_infinite() {
        assertThat(NormalCurve.quantile(0)).isNegative().isInfinite();
        assertThat(NormalCurve.quantile(1)).isPositive().isInfinite();
    }
}
