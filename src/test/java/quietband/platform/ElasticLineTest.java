package quietband.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.model.Platform;
import quietband.platform.Platforms.Kind;

/** Springs with mass against a chain of lumped masses, and their standing waves. */
class ElasticLineTest {

    private static final double K = 0.2 * Math.pow(2 * Math.PI * 90, 2);
    private static final double SPRING_MASS = 0.006;
    private static final double LOSS = 0.02;

    /**
     * |x_platform/x_housing| of mass - spring - mass: the spring cut into n equal pieces of stiffness n k with the
     * spring's mass lumped at the joints, each half of a piece at its ends (the outer half on the platform).
     */
    private static double chain(int n, double f) {
        double w2 = Math.pow(2 * Math.PI * f, 2);
        Complex k = new Complex(K * n, K * n * LOSS);
        double lump = SPRING_MASS / n;
        // from the platform inward: force into the first joint for unit motion of the platform
        Complex previous = Complex.ONE;
        Complex force = new Complex(-w2 * (Platforms.MASS + lump / 2));
        for (int i = 1; i <= n; i++) {
            // k (x_i - x_(i-1)) = force demanded so far
            Complex x = previous.add(force.divide(k));
            force = force.subtract(x.multiply(w2 * lump));
            previous = x;
        }
        return 1 / previous.norm();
    }

    // 2000 pieces: the chain's error falls with 1/n^2, (b/n)^2/24 relative in each wave number; b reaches 10 here and
    // the sharpest peak multiplies it by some 50, which stays below 1e-4
    @ParameterizedTest
    @ValueSource(doubles = {20, 85, 91, 300, 505, 520, 700, 1040, 1500, 1990})
    void an_elastic_spring_is_the_limit_of_a_chain_of_masses(double f) {
        Platform p = Platforms.four(new Kind(K, 0, LOSS, 0, Double.POSITIVE_INFINITY, SPRING_MASS));
        double expected = chain(2000, f);
        for (int axis = 0; axis < 3; axis++) {
            assertThat(Platforms.transmissibility(p, f, axis)).isCloseTo(expected, within(1e-4 * expected));
        }
    }

    @Test
    void at_low_frequency_a_third_of_the_springs_mass_rides_with_the_platform() {
        // Rayleigh's rule, from memory (Strutt, The Theory of Sound, 1877): f = sqrt(k/(m + m_s/3))/2 pi; its error is of
        // order (m_s/m)^2/45 relative, 2e-5 here
        Assembly a = new Assembly(Platforms.four(new Kind(K, 0, 0, 0, Double.POSITIVE_INFINITY, SPRING_MASS)));
        double rule = Math.sqrt(K / (Platforms.MASS + SPRING_MASS / 3)) / (2 * Math.PI);
        List<Resonances.Peak> peaks = Resonances.between(a, 50, 95);
        assertThat(peaks).anySatisfy(p -> assertThat(p.frequencyHz()).isCloseTo(rule, within(3e-5 * rule)));
        // and the mode table leaves the spring's mass out
        assertThat(a.modes().frequencyHz(0)).isCloseTo(90, within(1e-9));
    }

    // System:  spring fixed at both ends
    // Result:  first standing wave at sqrt(k/m_s)/2; f_surge/fn = pi sqrt(M/m_s) (derived)
    @Test
    void the_first_standing_wave_of_a_fixed_spring_is_at_half_the_root_of_stiffness_over_mass() {
        double surge = Math.sqrt(K / SPRING_MASS) / 2;
        assertThat(surge / 90).isCloseTo(Math.PI * Math.sqrt(Platforms.MASS / SPRING_MASS), within(1e-9));
        Platform p = Platforms.four(new Kind(K, 0, 1e-6, 0, Double.POSITIVE_INFINITY, SPRING_MASS));
        // at the standing wave the spring is infinitely stiff: the platform follows the housing
        assertThat(Platforms.transmissibility(p, surge, 2)).isCloseTo(1, within(1e-3));
        // a little above, platform and wave are in resonance: f = surge (1 + (fn/surge)^2) to first order
        List<Resonances.Peak> peaks = Resonances.between(new Assembly(p), 0.95 * surge, 1.05 * surge);
        double coupled = surge * (1 + Math.pow(90 / surge, 2));
        assertThat(peaks).anySatisfy(x -> assertThat(x.frequencyHz()).isCloseTo(coupled, within(1e-3 * surge)));
    }

    @Test
    void every_resonance_is_counted_and_as_wide_as_its_loss() {
        Assembly a = new Assembly(Platforms.four(new Kind(K, 0, 1e-3, 0, Double.POSITIVE_INFINITY, SPRING_MASS)));
        List<Resonances.Peak> peaks = Resonances.between(a, 10, 2000);
        // lossy springs only: every width is the loss factor times the frequency, 1 % for the coupling to the rigid mass
        double surge = Math.sqrt(K / SPRING_MASS) / 2;
        // (the standing waves that leave the platform still are counted at the pole itself, where a width means nothing)
        assertThat(peaks).filteredOn(p -> Math.abs(p.frequencyHz() / surge - 1) < 0.1 && p.widthHz() > 1e-3)
            .allSatisfy(p -> assertThat(p.widthHz() / p.frequencyHz()).isBetween(0.5e-3, 1.1e-3));
        // three bounces coincide, and two of the rocks: three places on the axis for six modes
        assertThat(peaks).filteredOn(p -> p.frequencyHz() < 200).hasSize(3);
    }
}
