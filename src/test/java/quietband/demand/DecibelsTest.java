package quietband.demand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Amplitudes count 20, powers 10 to the decade. */
class DecibelsTest {

    // tolerance: rounding of a logarithm
    private static final double TINY = 1e-12;

    @Test
    void a_decade_of_amplitude_is_20_db_and_one_of_power_10() {
        assertThat(Decibels.ofRatio(10)).isCloseTo(20, within(TINY));
        assertThat(Decibels.ofPower(10)).isCloseTo(10, within(TINY));
        assertThat(Decibels.amplitude(20)).isCloseTo(10, within(TINY));
        assertThat(Decibels.power(20)).isCloseTo(100, within(100 * TINY));
        assertThat(Decibels.margin(1, 10)).isCloseTo(20, within(TINY));
        assertThat(Decibels.over(10, 1)).isCloseTo(20, within(TINY));
    }

    @Test
    void what_cannot_be_computed_and_what_is_out_of_reach_stays_within_300_db() {
        assertThat(Decibels.ofRatio(Double.NaN)).isEqualTo(300);
        assertThat(Decibels.ofRatio(0)).isEqualTo(-300);
        assertThat(Decibels.over(0, 1)).isEqualTo(-120);
        assertThat(Decibels.margin(0, 0)).isEqualTo(300);
        assertThat(Decibels.margin(1, 0)).isEqualTo(-300);
    }
}
