package quietband.motion.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The window of a sweep: the cubic B-spline over four stretches, its integral, its overlap and what it lets through. */
class WindowedComponentTest {

    @Test
    void splines_a_stretch_apart_add_up_to_one_and_each_has_unit_integral() {
        double sum = 0;
        for (int i = 0; i < 4000; i++) {
            double x = (i + 0.5) / 1000;
            sum += WindowedComponent.spline(x) / 1000;
            double s = x % 1;
            double all = WindowedComponent.spline(s) + WindowedComponent.spline(s + 1) + WindowedComponent.spline(s + 2)
                + WindowedComponent.spline(s + 3);
            assertThat(all).isCloseTo(1, within(1e-14));
        }
        // the midpoint rule on a smooth bump that ends with three zero derivatives
        assertThat(sum).isCloseTo(1, within(1e-7));
        assertThat(WindowedComponent.spline(-0.1)).isZero();
        assertThat(WindowedComponent.spline(4.1)).isZero();
        assertThat(WindowedComponent.spline(2)).isCloseTo(2.0 / 3, within(1e-15));
        assertThat(WindowedComponent.spline(1.3)).isCloseTo(WindowedComponent.spline(2.7), within(1e-15));
    }

    // its transform is sinc^4: nothing at whole periods a stretch, -13.26 x 4 dB at the largest lobe between
    @ParameterizedTest
    @CsvSource({"1, 0", "2, 0", "3, 0", "0.5, 0.16425", "1.5, 0.0020278"})
    void it_lets_through_the_fourth_power_of_a_sinc(double periods, double expected) {
        double re = 0;
        double im = 0;
        int n = 40_000;
        for (int i = 0; i < n; i++) {
            double x = 4 * (i + 0.5) / n;
            re += WindowedComponent.spline(x) * Math.cos(2 * Math.PI * periods * x) * 4 / n;
            im += WindowedComponent.spline(x) * Math.sin(2 * Math.PI * periods * x) * 4 / n;
        }
        assertThat(Math.hypot(re, im)).isCloseTo(expected, within(1e-5));
        double u = Math.PI * periods;
        assertThat(Math.pow(Math.sin(u) / u, 4)).isCloseTo(expected, within(1e-5));
    }
}
