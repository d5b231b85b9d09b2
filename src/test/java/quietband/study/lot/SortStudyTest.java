package quietband.study.lot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.junit.jupiter.api.Test;
import quietband.lot.MeasuredLot;
import quietband.lot.SortRule;

/** Ten units of 0.1 to 1 ppb/g along x, counted by hand. */
class SortStudyTest {

    private static SortStudy sorted(double limit, Optional<Double> sigma) {
        int n = 10;
        String[] serials = new String[n];
        int[] lines = new int[n];
        double[][] value = new double[3][n];
        for (int i = 0; i < n; i++) {
            serials[i] = "u" + i;
            lines[i] = i + 2;
            value[0][i] = i % 2 == 0 ? (i + 1) / 10.0 : -(i + 1) / 10.0;
        }
        MeasuredLot lot = new MeasuredLot("lot.csv", "00", serials, lines, value, Optional.empty(), List.of());
        SortRule rule = new SortRule(limit, SortRule.By.AXIS, new double[] {0.25, limit}, 0, 1, 0.9, 5);
        return SortStudy.of(sigma.map(lot::withSigma).orElse(lot), rule, 0, 1);
    }

    /** The least n of which five are good with a chance of 90 %, one after the other. */
    private static long build(double share) {
        int n = 5;
        while (1 - new BinomialDistribution(n, share).cumulativeProbability(4) < 0.9) {
            n++;
        }
        return n;
    }

    @Test
    void units_to_build_are_the_least_count_that_is_enough() {
        SortStudy study = sorted(0.45, Optional.empty());
        assertThat(study.build()).isEqualTo(build(0.4));
        assertThat(study.cautious()).isGreaterThan(study.build());
        assertThat(study.classes().get(0).build()).isEqualTo(build(0.2));
        assertThat(study.classes().get(1).build()).isEqualTo(build(0.4));
        assertThat(study.risks()).isEmpty();
        assertThat(study.guards()).isEmpty();
    }

    // the median by the upper of the two middle ones is 0.6, above the limit of 0.45: forty steps of 0.03 up to 1.2
    @Test
    void other_limits_rise_to_twice_the_median_and_count_the_units_within() {
        SortStudy study = sorted(0.45, Optional.empty());
        assertThat(study.limits()).hasSize(40);
        for (int k = 0; k < 40; k++) {
            SortStudy.OtherLimit other = study.limits().get(k);
            double limit = 0.03 * (k + 1);
            // rounding alone
            assertThat(other.limitPpbPerG()).isCloseTo(limit, within(1e-12));
            long good = Math.min(10, Math.round(Math.floor(limit * 10 + 1e-6)));
            assertThat(other.share().good()).as("limit %s", limit).isEqualTo(good);
            assertThat(other.build()).isEqualTo(good == 0 ? -1 : build(good / 10.0));
        }
        assertThat(study.atLimit().share().good()).isEqualTo(4);
    }

    // quarters of the one uncertainty, 0.12 ppb/g: 0, 0.03 .. 0.36, all below the limit 0.45; below 0.2 no more than six
    @Test
    void guard_bands_are_quarters_of_the_uncertainty_below_the_limit() {
        SortStudy study = sorted(0.45, Optional.of(0.12));
        double[] guards = study.guards().stream().mapToDouble(SortStudy.GuardBand::guardPpbPerG).toArray();
        assertThat(guards).hasSize(13);
        for (int k = 0; k < 13; k++) {
            assertThat(guards[k]).isCloseTo(0.03 * k, within(1e-12));
            assertThat(study.guards().get(k).accepted().good()).isEqualTo((long) Math.floor((0.45 - 0.03 * k) * 10 + 1e-6));
        }
        assertThat(Arrays.stream(sorted(0.2, Optional.of(0.12)).guards().toArray())).hasSize(7);
        assertThat(study.risks()).isPresent();
    }
}
