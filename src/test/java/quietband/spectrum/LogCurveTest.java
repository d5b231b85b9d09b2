package quietband.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.spectrum.LogCurve.Outside;

class LogCurveTest {

    @Test
    void a_line_is_straight_on_log_log_paper_and_constant_or_zero_outside() {
        LogCurve c = LogCurve.logLog(new double[] {10, 1000}, new double[] {4, 0.04}, Outside.CONSTANT);
        assertThat(c.at(100)).isCloseTo(0.4, within(1e-15));
        assertThat(c.at(5)).isEqualTo(4);
        assertThat(c.at(5000)).isEqualTo(0.04);
        LogCurve z = LogCurve.logLog(new double[] {10, 1000}, new double[] {4, 0.04}, Outside.ZERO);
        assertThat(z.at(9.999)).isZero();
        assertThat(z.at(10)).isEqualTo(4);
        assertThat(z.at(1000)).isEqualTo(0.04);
        assertThat(z.at(1000.001)).isZero();
    }

    @Test
    void levels_are_linear_in_db_over_log_frequency() {
        LogCurve c = LogCurve.decibel(new double[] {10, 1000}, new double[] {-60, -100});
        assertThat(c.at(100)).isCloseTo(-80, within(1e-12));
        assertThat(c.at(1)).isEqualTo(-60);
    }

    // 3.0103 dB per octave is slope 1, "3 dB per octave" 0.99658: both sides of -1 and -1 itself must be exact
    @ParameterizedTest
    @ValueSource(doubles = {-3, -1.00342, -1.0000001, -1, -0.9999999, -0.99658, 0, 1, 2})
    void the_integral_of_a_segment_is_exact_also_near_slope_minus_one(double slope) {
        double f1 = 20;
        double f2 = 2000;
        LogCurve c = LogCurve.logLog(new double[] {f1, f2}, new double[] {0.5, 0.5 * Math.pow(f2 / f1, slope)}, Outside.ZERO);
        // Simpson's rule in log f with 20000 steps: error below 1e-12
        int n = 20000;
        double h = Math.log(f2 / f1) / n;
        double sum = 0;
        for (int i = 0; i <= n; i++) {
            double f = f1 * Math.exp(h * i);
            sum += (i == 0 || i == n ? 1 : i % 2 == 1 ? 4 : 2) * 0.5 * Math.pow(f / f1, slope) * f;
        }
        assertThat(c.integral(0, 1e9)).isCloseTo(sum * h / 3, within(1e-10 * sum * h));
        assertThat(c.integral(20, 200) + c.integral(200, 2000)).isCloseTo(c.integral(0, 1e9), within(1e-12 * sum * h));
    }
}
