package quietband.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.Function;
import org.junit.jupiter.api.Test;
import quietband.numerics.BoundedSearch.Score;

/** The search on functions whose best point is known. */
class BoundedSearchTest {

    private static double[] middle(int n) {
        double[] x = new double[n];
        java.util.Arrays.fill(x, 0.5);
        return x;
    }

    @Test
    void it_finds_the_top_of_a_crooked_ridge_of_twelve_values() {
        Function<double[], Score> ridge = x -> {
            double sum = 0;
            for (int i = 0; i < 12; i++) {
                double turned = x[i] - 0.3 - 0.02 * i + (i > 0 ? 0.6 * (x[i - 1] - 0.3 - 0.02 * (i - 1)) : 0);
                sum += Math.pow(10, i / 4.0) * turned * turned;
            }
            return new Score(-sum, -1);
        };
        BoundedSearch.Result r = BoundedSearch.run(middle(12), 1, 2, ridge);
        // a condition of 10^2.75: the last steps are shorter than 1e-3 of the box
        assertThat(r.best().score().goal()).isCloseTo(0, within(1e-3));
        assertThat(r.best().x()[11]).isCloseTo(0.52, within(5e-3));
    }

    @Test
    void it_stops_at_a_limit_and_at_a_bound_without_breaking_them() {
        Function<double[], Score> slope = x -> new Score(10 * x[0] + 3 * x[1], 20 * (x[0] + x[1] - 1.2));
        BoundedSearch.Result r = BoundedSearch.run(middle(2), 3, 2, slope);
        assertThat(r.best().score().over()).isLessThanOrEqualTo(0);
        // best where x0 = 1 and x1 = 0.2
        assertThat(r.best().score().goal()).isCloseTo(10.6, within(0.01));
    }

    @Test
    void the_same_seed_gives_the_same_point_on_one_thread_and_on_three() {
        Function<double[], Score> kinked = x -> new Score(-Math.max(Math.abs(x[0] - 0.4), Math.abs(x[1] - 0.7)
            + 0.3 * Math.abs(x[2] - 0.1)), -1);
        double[] one = BoundedSearch.run(middle(3), 5, 1, kinked).best().x();
        double[] three = BoundedSearch.run(middle(3), 5, 3, kinked).best().x();
        assertThat(three).isEqualTo(one);
        assertThat(one[0]).isCloseTo(0.4, within(2e-3));
        assertThat(one[1]).isCloseTo(0.7, within(2e-3));
    }
}
