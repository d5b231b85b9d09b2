package quietband.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Elementary responses at their marked places and against complex division. */
class ComplexProductTest {

    // tolerance: rounding of a few operations
    private static final double TINY = 1e-14;

    private static void same(Complex a, Complex b) {
        assertThat(a.subtract(b).norm()).isLessThan(TINY * b.norm());
    }

    @Test
    void a_pole_is_half_the_power_and_45_degrees_late_at_its_corner() {
        ComplexProduct p = new ComplexProduct().pole(1);
        assertThat(p.power()).isCloseTo(0.5, within(TINY));
        assertThat(p.value().getArgument()).isCloseTo(-Math.PI / 4, within(TINY));
        same(new ComplexProduct().pole(0).value(), Complex.ONE);
    }

    @Test
    void a_resonance_is_its_q_a_quarter_turn_late() {
        same(new ComplexProduct().resonance(1, 7).value(), new Complex(0, -7));
        same(new ComplexProduct().resonance(0, 7).value(), Complex.ONE);
        // far above: -1/r^2
        assertThat(new ComplexProduct().resonance(1e6, 7).re()).isCloseTo(-1e-12, within(1e-23));
    }

    @Test
    void transmissibility_crosses_one_at_root_two_whatever_the_damping() {
        for (double q : new double[] {0.3, 1, 50}) {
            assertThat(new ComplexProduct().transmissibility(Math.sqrt(2), q).power()).isCloseTo(1, within(1e-12));
        }
        // at resonance |1 + j/Q| Q = sqrt(Q^2 + 1)
        assertThat(new ComplexProduct().transmissibility(1, 7).power()).isCloseTo(50, within(50 * TINY));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.8, 1, 1.3, 20})
    void a_chain_is_the_product_of_its_elements(double r) {
        Complex d = new Complex(1 - r * r, r / 3);
        Complex all = new Complex(0.2, -0.4).divide(new Complex(1, r)).divide(d).multiply(new Complex(1, r / 3)).divide(d);
        same(new ComplexProduct().set(0.2, -0.4).pole(r).resonance(r, 3).transmissibility(r, 3).value(), all);
    }

    @Test
    void magnitudes_are_those_of_three_and_four() {
        double[] re = {3, 0, -6};
        double[] im = {-4, 2, 8};
        assertThat(Magnitudes.squared(re, im)).containsExactly(25, 4, 100);
        assertThat(Magnitudes.of(re, im)).containsExactly(5, 2, 10);
        Magnitudes.squared(re, re, im, 2);
        assertThat(re).containsExactly(25, 4, -6);
    }
}
