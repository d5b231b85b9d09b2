package quietband.model.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which symmetric matrices are those of a rigid body: of point masses always, and of none when a principal moment is too large. */
class InertiaCheckTest {

    /** J = sum m (r^2 I - r r^T): whatever the masses, some body has it. */
    @Test
    void point_masses_always_make_a_rigid_body() {
        Random random = new Random(4);
        for (int body = 0; body < 200; body++) {
            double[][] j = new double[3][3];
            for (int n = 0; n < 4; n++) {
                double[] r = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
                double m = Math.pow(10, -3 * random.nextDouble());
                for (int a = 0; a < 3; a++) {
                    for (int b = 0; b < 3; b++) {
                        j[a][b] += m * ((a == b ? r[0] * r[0] + r[1] * r[1] + r[2] * r[2] : 0) - r[a] * r[b]);
                    }
                }
            }
            assertThat(PlatformChecks.physical(j)).isEmpty();
        }
    }

    // a plate has J_zz = J_xx + J_yy exactly; a part in 1e8 above is no body any more; rounding of 1e-9 is left
    @ParameterizedTest
    @CsvSource({"3, 4, 7, ''", "3, 4, 7.0000001, above the sum of the other two", "3, 4, 0.9, above the sum of the other two",
        "0, 0, 0, a moment is not above 0", "NaN, 1, 1, a moment is not above 0", "1, 1, -1, not positive definite"})
    void the_largest_moment_is_at_most_the_sum_of_the_others(double xx, double yy, double zz, String said) {
        String wrong = PlatformChecks.physical(new double[][] {{xx, 0, 0}, {0, yy, 0}, {0, 0, zz}});
        if (said.isEmpty()) {
            assertThat(wrong).isEmpty();
        } else {
            assertThat(wrong).contains(said);
        }
    }

    // products: |J_xy| = 1 with J_xx = J_yy = 1 makes a principal moment of 0 (a needle), 0.99 is still a body with J_zz = 1
    @Test
    void products_are_bounded_by_the_moments() {
        assertThat(PlatformChecks.physical(new double[][] {{1, 0.49, 0}, {0.49, 1, 0}, {0, 0, 1}})).isEmpty();
        // principal 0.49, 1.51 and 1: 1.51 is above 1.49
        assertThat(PlatformChecks.physical(new double[][] {{1, 0.51, 0}, {0.51, 1, 0}, {0, 0, 1}})).contains("sum of the other two");
        assertThat(PlatformChecks.physical(new double[][] {{1, 1.01, 0}, {1.01, 1, 0}, {0, 0, 1}})).contains("not positive definite");
        assertThat(PlatformChecks.physical(new double[][] {{1, 9, 0}, {9, 1, 0}, {0, 0, 1}}))
            .contains("a product is larger than the moments");
    }
}
