package quietband.lot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ProportionTest {

    // Input:   50 of 500 at 90 %
    // Result:  0.07873857 to 0.1248658
    // Ref:     tests of Apache Commons Math (read)
    @Test
    void fifty_of_five_hundred_have_the_published_interval() {
        Proportion p = new Proportion(50, 500, 0.9);
        // half a unit of the last digit stated
        assertThat(p.low()).isCloseTo(0.07873857, within(5e-9));
        assertThat(p.high()).isCloseTo(0.1248658, within(5e-8));
    }

    // Result:  no failure in 59 and in 100: one-sided 95 % upper bound of the failing share 0.0495076, 0.0295130 (derived)
    @Test
    void without_a_failure_the_bound_is_that_of_the_power_law() {
        assertThat(1 - new Proportion(59, 59, 0.95).atLeast()).isCloseTo(0.0495076, within(5e-8));
        assertThat(1 - new Proportion(100, 100, 0.95).atLeast()).isCloseTo(0.0295130, within(5e-8));
        assertThat(new Proportion(59, 59, 0.95).high()).isEqualTo(1);
        assertThat(new Proportion(0, 59, 0.95).low()).isZero();
    }

    // Ref:     S. S. Wilks, Ann. Math. Statist. 12 (1941) 91 (read in check values)
    @Test
    void claims_need_as_many_units_as_wilks_says() {
        assertThat(Proportion.unitsNeeded(0.90, 0.95, 0)).isEqualTo(29);
        assertThat(Proportion.unitsNeeded(0.95, 0.95, 0)).isEqualTo(59);
        assertThat(Proportion.unitsNeeded(0.99, 0.95, 0)).isEqualTo(299);
        // with one failure allowed in 95/95 it is 93 (from memory, the second-order Wilks number of safety analysis)
        assertThat(Proportion.unitsNeeded(0.95, 0.95, 1)).isEqualTo(93);
    }
}
