package quietband.tolerance.influence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import quietband.model.Design;
import quietband.response.verdict.Assessor;
import quietband.tolerance.campaign.MonteCarlo;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.draw.ScatterModels;
import quietband.tolerance.judge.MonteCarloPlan;

class NearestPointTest {

    @Test
    void a_line_in_two_normal_variables_has_the_foot_of_its_perpendicular() {
        boolean[] free = {true, true};
        double[] z = new NearestPoint(p -> 5 - 3 * p[0] - 4 * p[1], free, 1000).from(new double[2]);
        // distance 5/5 = 1 at (3, 4)/5; bisection goes far beyond 1e-9, the gradient of a line is exact
        assertThat(z[0]).isCloseTo(0.6, within(1e-6));
        assertThat(z[1]).isCloseTo(0.8, within(1e-6));
    }

    @Test
    void a_search_in_many_variables_ends_at_its_bound_with_what_a_ray_gives() {
        int n = 3000;
        boolean[] free = new boolean[n];
        Arrays.fill(free, true);
        AtomicInteger evaluations = new AtomicInteger();
        double[] start = new double[n];
        Arrays.fill(start, 1);
        // the sum of all reaches 5 at 5/sqrt(n) along the diagonal; one gradient takes 6000 evaluations
        NearestPoint search = new NearestPoint(p -> {
            evaluations.incrementAndGet();
            return 5 - Arrays.stream(p).sum();
        }, free, 1000);
        double[] z = search.from(start);
        assertThat(Arrays.stream(z).sum()).isCloseTo(5, within(1e-9));
        assertThat(search.from(new double[n])).isNull();
        assertThat(search.bounded()).isTrue();
        assertThat(evaluations).hasValueLessThan(1000);
    }

    @Test
    void a_gain_and_a_phase_error_fail_first_along_the_wider_one() {
        // |e + j p| = L: the nearest point is where the larger deviation alone reaches the limit, 0.02/0.01 = 2 sigma;
        // the phase, half as wide, would need 4 sigma
        Design design = ScatterModels.corrected("0.02 ppb/g", "tolerances:\n  - {name: gain, of: cancellation.error.gain.x, add: 1 %}\n"
            + "  - {name: phase, of: cancellation.error.phase.x, add: 5 mrad}\n");
        MonteCarloPlan plan = new MonteCarloPlan(design, 3);
        MonteCarloResult o = new MonteCarlo(plan, new double[] {10, 2000}, 1).run(500, () -> false, n -> { });
        LikeliestFailure found = LikeliestFailure.of(plan, o).orElseThrow();
        // the search stops when a step gains less than 1e-4 of the distance
        assertThat(found.distance()).isCloseTo(2, within(0.002));
        assertThat(Math.abs(found.unit().valueOf("cancellation.error.gain.x"))).isCloseTo(0.02, within(2e-4));
        assertThat(Assessor.assess(plan.unit(0, found.unit())).requirementMet()).contains(false);
        assertThat(found.parts().get(0)).contains("gain");
    }
}
