package quietband.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Platform;
import quietband.platform.Platforms.Kind;

/** One axis of the platform against closed forms of the single-degree-of-freedom isolator. */
class IsolatorTest {

    private static final double F0 = 100;
    private static final double W0 = 2 * Math.PI * F0;
    private static final double K = Platforms.MASS * W0 * W0;

    private static Platform viscous(double ratio) {
        return Platforms.four(Kind.viscous(K, 2 * ratio * Platforms.MASS * W0));
    }

    // System:  one axis, base excited, viscous damping ratio z
    // Input:   z, frequency ratio r
    // Result:  transmissibility
    // Ref:     closed form T^2 = (1 + (2zr)^2)/((1 - r^2)^2 + (2zr)^2): Harris' Shock and Vibration Handbook (memory); figures
    //          derived from it
    // Note:    the figures have seven digits; 2e-7 covers their rounding
    @ParameterizedTest
    @CsvSource({"0.05, 0.997522, 10.062214", "0.1, 0.990334, 5.122774", "0.2, 0.964730, 2.733921",
        "0.1, 5, 0.0588745", "0.1, 10, 0.0225819", "0.03, 1.4142135623730951, 1", "0.4, 1.4142135623730951, 1"})
    void viscous_transmissibility_is_the_closed_form(double z, double r, double expected) {
        for (int axis = 0; axis < 3; axis++) {
            assertThat(Platforms.transmissibility(viscous(z), r * F0, axis)).isCloseTo(expected, within(2e-6 * expected + 3e-8));
        }
    }

    @Test
    void the_peak_of_a_viscous_isolator_is_where_and_as_high_as_the_closed_form_says() {
        double best = 0;
        double at = 0;
        for (double r = 0.985; r < 1; r += 1e-6) {
            double t = Platforms.transmissibility(viscous(0.1), r * F0, 2);
            if (t > best) {
                best = t;
                at = r;
            }
        }
        // 1e-6: the step of the search, and half a unit of the sixth digit
        assertThat(at).isCloseTo(0.990334, within(1.5e-6));
        assertThat(best).isCloseTo(5.122774, within(1e-6));
    }

    // Result:  loss factor 0.2: T(1) = sqrt(1 + 1/eta^2) = 5.0990, T(10) = 0.0103010 (derived)
    @ParameterizedTest
    @CsvSource({"1, 5.0990195136", "10, 0.0103010"})
    void a_loss_factor_gives_the_closed_form(double r, double expected) {
        Platform lossy = Platforms.four(new Kind(K, 0, 0.2, 0, Double.POSITIVE_INFINITY, 0));
        double exact = Math.sqrt((1 + 0.04) / (Math.pow(1 - r * r, 2) + 0.04));
        double t = Platforms.transmissibility(lossy, r * F0, 0);
        assertThat(t).isCloseTo(exact, within(1e-12)).isCloseTo(expected, within(1e-7));
    }

    // System:  relaxation isolator: spring k, beside it a branch N k in series with a damper
    // Input:   N; corner at the best damping, corner = N fn/(2 z), z = N sqrt(2(N+2))/(4(N+1))
    // Result:  lowest possible peak 1 + 2/N, at r given
    // Ref:     Ruzicka & Cavanaugh, Machine Design 1958 (memory), confirmed numerically on the page of check values
    // Note:    1e-4: the published r have five digits, and the peak is flat there
    @ParameterizedTest
    @CsvSource({"1, 1.1547", "3, 1.2649", "5, 1.3093", "10, 1.3540"})
    void a_relaxing_isolator_at_its_best_damping_peaks_at_one_plus_two_over_n(double n, double r) {
        double z = n * Math.sqrt(2 * (n + 2)) / (4 * (n + 1));
        Platform p = Platforms.four(new Kind(K, 0, 0, n, n * F0 / (2 * z), 0));
        double peak = Platforms.transmissibility(p, r * F0, 1);
        assertThat(peak).isCloseTo(1 + 2 / n, within(1e-4));
        assertThat(Platforms.transmissibility(p, 0.97 * r * F0, 1)).isLessThan(peak);
        assertThat(Platforms.transmissibility(p, 1.03 * r * F0, 1)).isLessThan(peak);
    }

    @Test
    void the_best_corner_for_n_of_three_is_2_53_times_the_natural_frequency() {
        double z = 3 * Math.sqrt(10) / 16;
        assertThat(3 / (2 * z)).isCloseTo(2.5298, within(5e-5));
    }

    // System:  relaxation isolator through its limits: a corner far above the band never acts (k alone), far below it is rigid (k + N k)
    @Test
    void a_relaxing_branch_is_absent_below_its_corner_and_stiff_above() {
        Platform absent = Platforms.four(new Kind(K, 0, 0.01, 3, 1e12, 0));
        Platform stiff = Platforms.four(new Kind(K, 0, 0.01, 3, 1e-9, 0));
        double t = Math.sqrt(1 + 1e-4) / Math.hypot(1 - 4, 0.01);
        double ts = Math.hypot(4, 0.01) / Math.hypot(4 - 4 * 0.25, 0.01);
        assertThat(Platforms.transmissibility(absent, 2 * F0, 0)).isCloseTo(t, within(1e-8));
        assertThat(Platforms.transmissibility(stiff, F0, 0)).isCloseTo(ts, within(1e-8));
    }

    // Result:  natural frequency from static sag: 25 mm gives 3.1522 Hz, 1 mm 15.7609 Hz, f = sqrt(g0/sag)/(2 pi) (derived)
    @ParameterizedTest
    @CsvSource({"0.025, 3.1522", "0.001, 15.7609"})
    void static_sag_and_natural_frequency_belong_together(double sag, double expected) {
        Platform p = Platforms.four(Kind.viscous(Platforms.MASS * 9.80665 / sag, 0));
        // half a unit of the last digit
        assertThat(new Assembly(p).modes().frequencyHz(0)).isCloseTo(expected, within(5e-5));
    }

    @Test
    void modal_damping_is_the_damping_ratio_of_every_mode() {
        Platform four = Platforms.four(Kind.viscous(K, 0));
        Assembly a = new Assembly(Platforms.with(four.springs(), Platforms.with(four.springs(), quietband.model.Vec.ZERO, 0)
            .centreOfGravity().plus(new quietband.model.Vec(0.002, -0.001, 0.004)), 0.07));
        DynamicStiffness d = new DynamicStiffness(a);
        for (int n = 0; n < 6; n++) {
            assertThat(d.dampingRatio(n)).isCloseTo(0.07, within(1e-12));
        }
    }
}
