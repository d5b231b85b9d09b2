package quietband.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Grids that miss no peak, integrals on them, and curves straight on log paper. */
class FrequencyGridTest {

    @Test
    void a_logarithmic_grid_has_equal_ratios_and_both_ends() {
        double[] f = LogGrid.between(31, 10, 10_000);
        assertThat(f[0]).isEqualTo(10);
        assertThat(f[30]).isEqualTo(10_000);
        for (int i = 1; i < f.length; i++) {
            assertThat(f[i] / f[i - 1]).isCloseTo(Math.pow(10, 0.1), within(1e-12));
        }
        assertThatThrownBy(() -> LogGrid.between(1, 10, 20)).hasMessageContaining("at least 2 points");
        assertThatThrownBy(() -> LogGrid.between(5, 0, 20)).hasMessageContaining("0 < from < to");
        assertThatThrownBy(() -> LogGrid.between(5, 20, 20)).isInstanceOf(IllegalArgumentException.class);
    }

    // eight points in the half-power width: the nearest to any place within the width is a sixteenth of it away
    @ParameterizedTest
    @CsvSource({"97.3, 0.02", "97.3, 5", "10.0001, 1e-4", "1999, 60"})
    void a_peak_gets_eight_points_in_its_half_power_width(double centre, double width) {
        SeededGrid grid = new SeededGrid(10, 2000, 20);
        grid.peak(centre, width);
        double[] f = grid.build();
        assertThat(f).contains(centre, 10, 2000).isSorted();
        double low = Math.max(10, centre - width / 2);
        double high = Math.min(2000, centre + width / 2);
        long inside = Arrays.stream(f).filter(x -> x >= low - 1e-12 && x <= high + 1e-12).count();
        assertThat(inside).isGreaterThanOrEqualTo((long) Math.floor(8 * (high - low) / width * (1 - 1e-9)));
        double step = 0;
        for (int i = 1; i < f.length; i++) {
            step = Math.max(step, Math.log(f[i] / f[i - 1]));
        }
        // the base of 20 a decade stays everywhere
        assertThat(step).isLessThanOrEqualTo(Math.log(10) / 20 * (1 + 1e-9));
    }

    @Test
    void what_lies_outside_or_is_no_peak_is_left_out() {
        SeededGrid grid = new SeededGrid(new double[] {10, 20, 40});
        grid.addAll(5, 10, 15, 41);
        grid.peak(Double.POSITIVE_INFINITY, 1);
        grid.peak(-3, 1);
        grid.everyHz(0);
        assertThat(grid.build()).containsExactly(10, 15, 20, 40);
        grid.everyHz(5);
        double[] f = grid.build();
        for (int i = 1; i < f.length; i++) {
            assertThat(f[i] - f[i - 1]).isLessThanOrEqualTo(5 + 1e-12);
        }
    }

    // integral of 1/((1 - u^2)^2 + (u/Q)^2) over all u is pi Q/2 for any Q; 1e-6: eight intervals a width, and u from 1e-4 to 1e3
    @ParameterizedTest
    @CsvSource({"5", "50", "2000"})
    void a_resonance_is_integrated_through_a_seeded_grid(double q) {
        SeededGrid grid = new SeededGrid(1e-4, 1e3, 100);
        grid.peak(1, 1 / q);
        double[] sum = FrequencyQuadrature.integrate(grid.build(), 2, (u, into) -> {
            into[0] = 1 / (Math.pow(1 - u * u, 2) + u * u / (q * q));
            into[1] = 1 / u;
        });
        assertThat(sum[0] + 1e-4 + 1e-9 / 3).isCloseTo(Math.PI * q / 2, within(1e-6 * Math.PI * q / 2));
        assertThat(sum[1]).isCloseTo(Math.log(1e7), within(1e-10));
    }

    // second road: the midpoint rule in log f; slopes of 0, -1 (a logarithm), +3 and any
    @Test
    void a_profile_is_integrated_segment_by_segment_over_any_part_of_it() {
        LogCurve curve = LogCurve.logLog(new double[] {10, 40, 200, 300, 2000}, new double[] {0.01, 0.01, 0.002, 0.00675, 0.0001},
            LogCurve.Outside.ZERO);
        for (double[] range : new double[][] {{10, 2000}, {5, 5000}, {33, 260}, {40, 200}, {2000, 3000}}) {
            int n = 200_000;
            double low = Math.log(range[0]);
            double step = (Math.log(range[1]) - low) / n;
            double sum = 0;
            for (int i = 0; i < n; i++) {
                double f = Math.exp(low + (i + 0.5) * step);
                sum += curve.at(f) * f * step;
            }
            // an edge of the profile falls within one step
            assertThat(curve.integral(range[0], range[1])).isCloseTo(sum, within(2e-5 * 0.5));
        }
        assertThat(curve.integral(40, 200)).isCloseTo(0.01 * 40 * Math.log(5), within(1e-12));
        assertThat(curve.scaled(2).integral(40, 200)).isCloseTo(0.02 * 40 * Math.log(5), within(1e-12));
    }

    @Test
    void levels_are_straight_in_decibels_and_constant_outside() {
        LogCurve level = LogCurve.decibel(new double[] {10, 1000}, new double[] {-100, -140});
        assertThat(level.at(100)).isCloseTo(-120, within(1e-12));
        assertThat(level.at(1)).isEqualTo(-100);
        assertThat(level.at(1e5)).isEqualTo(-140);
        assertThatThrownBy(() -> level.integral(10, 100)).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> level.scaled(2)).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> LogCurve.decibel(new double[] {10, 10}, new double[2])).hasMessageContaining("rise strictly");
        assertThatThrownBy(() -> LogCurve.decibel(new double[] {10}, new double[] {Double.NaN})).hasMessageContaining("be numbers");
        LogCurve one = LogCurve.logLog(new double[] {50}, new double[] {3}, LogCurve.Outside.CONSTANT);
        assertThat(one.at(7)).isEqualTo(3);
        assertThat(one.integral(10, 100)).isCloseTo(270, within(1e-12));
    }

    // pass band to 2e-5 (90 dB), what would fold 90 dB down
    @Test
    void every_fifth_sample_keeps_the_pass_band_and_lets_nothing_fold() {
        for (double f : new double[] {0, 0.03, 0.08, 0.121, 0.3, 0.477}) {
            int n = 20_000;
            double[] in = new double[n];
            Arrays.setAll(in, k -> Math.cos(2 * Math.PI * f * k + 0.4));
            double[] worst = {0};
            long[] count = {0};
            Decimator decimator = new Decimator(2, 5, 0.08, (number, values) -> {
                assertThat(number).isEqualTo(count[0]++);
                double passed = f <= 0.08 ? Math.cos(2 * Math.PI * f * 5 * number + 0.4) : 0;
                if (number > 100 && number < n / 5 - 100) {
                    worst[0] = Math.max(worst[0], Math.abs(values[0] - passed));
                    assertThat(values[1]).isEqualTo(-2 * values[0]);
                }
            });
            double[] twice = Arrays.stream(in).map(v -> -2 * v).toArray();
            // in pieces of any length
            Random random = new Random(1);
            for (int at = 0; at < n;) {
                int part = Math.min(n - at, 1 + random.nextInt(900));
                decimator.push(new double[][] {Arrays.copyOfRange(in, at, at + part), Arrays.copyOfRange(twice, at, at + part)}, part);
                at += part;
            }
            decimator.finish();
            assertThat(count[0]).isEqualTo(n / 5);
            assertThat(worst[0]).as("%s of the rate", f).isLessThan(4e-5);
        }
        assertThatThrownBy(() -> new Decimator(1, 5, 0.11, (k, v) -> { })).hasMessageContaining("leaves no room");
    }
}
