package quietband.response.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Stack;
import quietband.response.Models;

/** Where a limit is met, from the transmissibility of one axis solved for its crossings. */
class CoverageTest {

    private static final double SENSITIVITY = 1e-9;

    /** One axis at fn with a damping ratio (viscous) or loss factor; 10 Hz to 2 kHz against a flat limit in ppb/g. */
    private static Assessment assessed(double fn, double z, double eta, double limit) {
        double w = 2 * Math.PI * fn;
        double k = 0.21 * w * w / 4;
        String spring = String.format(Locale.ROOT, "stiffness: %.17g N/m, damping: %.17g N*s/m, loss_factor: %.17g", k,
            2 * z * 0.21 * w / 4, eta);
        return Assessor.assess(Models.of("quietband: 1\noscillator: {carrier: 10 MHz, resonator: {sensitivity: {z: 1 ppb/g}}}\n"
            + Models.platform(spring, "")
            + "requirement: {residual: [{frequency: 10 Hz, limit: " + limit + " ppb/g}]}\n"));
    }

    // System:  |A|^2 = (1 + 4 z^2 u)/((1 - u)^2 + 4 z^2 u), u = (f/fn)^2, against q = limit/sensitivity
    // Result:  crossings at the roots of q^2 u^2 + (4 z^2 (q^2 - 1) - 2 q^2) u + q^2 - 1 = 0
    // Note:    crossings are refined to 1e-6 of their frequency; the last line of a double is far below
    @ParameterizedTest
    @CsvSource({"90, 0.07, 2", "90, 0.002, 1.5", "47, 0.2, 1.2", "300, 0.03, 0.1", "21, 0.01, 0.02"})
    void the_gap_lies_between_the_roots_of_the_transmissibility(double fn, double z, double q) {
        StackVerdict v = assessed(fn, z, 0, q * SENSITIVITY * 1e9).verdict(Stack.ISOLATED);
        double b = 4 * z * z * (q * q - 1) - 2 * q * q;
        double root = Math.sqrt(b * b - 4 * q * q * (q * q - 1));
        double upper = fn * Math.sqrt((-b + root) / (2 * q * q));
        double lower = q > 1 ? fn * Math.sqrt((-b - root) / (2 * q * q)) : 10;
        assertThat(v.gaps()).hasSize(1);
        assertThat(v.gaps().get(0)[0]).isCloseTo(lower, within(1e-6 * lower));
        assertThat(v.gaps().get(0)[1]).isCloseTo(upper, within(1e-6 * upper));
        // share of the band on a logarithmic scale
        assertThat(v.share()).isCloseTo(1 - Math.log(upper / lower) / Math.log(200), within(1e-6));
    }

    // Result:  the peak of |A| lies at u = (sqrt(1 + 8 z^2) - 1)/(4 z^2); margin = 20 log10(limit/peak)
    // Note:    the maximum is promised to 1e-4 dB
    @ParameterizedTest
    @CsvSource({"90, 0.07", "60, 0.004", "250, 0.3"})
    void the_worst_point_is_the_peak_of_the_transmissibility(double fn, double z) {
        var worst = assessed(fn, z, 0, 0.5).verdict(Stack.ISOLATED).worst();
        double u = (Math.sqrt(1 + 8 * z * z) - 1) / (4 * z * z);
        double peak = Math.sqrt((1 + 4 * z * z * u) / ((1 - u) * (1 - u) + 4 * z * z * u));
        assertThat(worst.axis()).isEqualTo("z");
        assertThat(worst.marginDb()).isCloseTo(20 * Math.log10(0.5 / peak), within(1e-4));
        assertThat(worst.residualPerG()).isCloseTo(SENSITIVITY * peak, within(2e-5 * SENSITIVITY * peak));
        // flat on top: 1e-4 dB is sqrt(2e-5) of a half-power width of 2 z
        assertThat(worst.frequencyHz()).isCloseTo(fn * Math.sqrt(u), within(0.01 * z * fn));
    }

    // System:  constant loss instead: |A|^2 = (1 + eta^2)/((1 - u)^2 + eta^2), peak sqrt(1 + 1/eta^2) at fn itself
    @ParameterizedTest
    @CsvSource({"120, 0.28", "75, 0.01"})
    void with_a_loss_factor_the_peak_is_at_the_natural_frequency(double fn, double eta) {
        StackVerdict v = assessed(fn, 0, eta, 1.2).verdict(Stack.ISOLATED);
        assertThat(v.worst().residualPerG()).isCloseTo(SENSITIVITY * Math.sqrt(1 + 1 / (eta * eta)), within(2e-5 * SENSITIVITY / eta));
        double half = Math.sqrt((1 + eta * eta) / 1.44 - eta * eta);
        assertThat(v.gaps().get(0)[0]).isCloseTo(fn * Math.sqrt(1 - half), within(1e-6 * fn));
        assertThat(v.gaps().get(0)[1]).isCloseTo(fn * Math.sqrt(1 + half), within(2e-6 * fn));
    }

    @Test
    void a_limit_above_the_peak_covers_all_of_the_band_and_one_below_the_tail_none() {
        // peak of 7.2 at a damping ratio of 0.07; at 2 kHz still (f_n/f)^2 sqrt(1 + (2 z f/f_n)^2) = 0.0066 passes
        StackVerdict all = assessed(90, 0.07, 0, 8).verdict(Stack.ISOLATED);
        assertThat(all.share()).isEqualTo(1);
        assertThat(all.gaps()).isEmpty();
        StackVerdict none = assessed(90, 0.07, 0, 0.006).verdict(Stack.ISOLATED);
        assertThat(none.share()).isZero();
        assertThat(none.intervals()).isEmpty();
        assertThat(none.gaps()).hasSize(1);
        assertThat(none.gaps().get(0)).containsExactly(10, 2000);
    }

    @Test
    void the_vector_is_judged_where_it_is_asked_and_is_the_root_of_the_squares() {
        String text = Models.oscillator("") + "requirement: {by: vector, residual: [{frequency: 10 Hz, limit: 1.3 ppb/g}, "
            + "{frequency: 2 kHz, limit: 1.3 ppb/g}]}\n";
        // 0.3, 0.4 and 1.2 ppb/g make exactly 1.3
        StackVerdict v = Assessor.assess(Models.of(text)).verdict(Stack.BARE);
        assertThat(v.worst().axis()).isEqualTo("vector");
        assertThat(v.worst().marginDb()).isCloseTo(0, within(1e-12));
        assertThat(v.share()).isEqualTo(1);
        StackVerdict single = Assessor.assess(Models.of(text.replace("by: vector", "by: axis"))).verdict(Stack.BARE);
        assertThat(single.worst().axis()).isEqualTo("z");
        assertThat(single.worst().marginDb()).isCloseTo(20 * Math.log10(1.3 / 1.2), within(1e-9));
    }
}
