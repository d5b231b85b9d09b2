package quietband.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import quietband.model.Vec;

class CoordinateCovarianceTest {

    // System:  two drives, each with a weight: variance of l q is sum weight |l q|^2, formed directly
    // Note:    rounding; a pair counted once instead of twice, or a conjugate with the wrong sign, is off by a large part
    @Test
    void variance_at_a_point_is_the_weighted_square_of_its_displacement() {
        Random random = new Random(3);
        double[] rows = PointMotion.of(new Vec(0.03, -0.02, 0.01));
        double[] sums = new double[5 + CoordinateCovariance.PAIRS];
        double[] expected = new double[3];
        for (int n = 0; n < 4; n++) {
            double weight = 0.5 + n;
            double[] re = random.doubles(6, -1, 1).toArray();
            double[] im = random.doubles(6, -1, 1).toArray();
            CoordinateCovariance.add(weight, re, im, sums, 5);
            for (int i = 0; i < 3; i++) {
                double x = 0;
                double y = 0;
                for (int c = 0; c < 6; c++) {
                    x += rows[6 * i + c] * re[c];
                    y += rows[6 * i + c] * im[c];
                }
                expected[i] += weight * (x * x + y * y);
            }
        }
        for (int i = 0; i < 3; i++) {
            assertThat(CoordinateCovariance.variance(rows, 6 * i, sums, 5)).isCloseTo(expected[i], within(1e-13 * expected[i]));
        }
        assertThat(sums[4]).isZero();
    }
}
