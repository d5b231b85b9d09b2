package quietband.tuning.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Vibration.Shock;
import quietband.model.Vibration.ShockShape;
import quietband.vibration.Pulse;

/** One mode under a pulse. */
class SwingPeakTest {

    // System:  one axis, undamped, natural period T, base pulse of length t
    // Result:  largest response over the static one: half-sine 1.768458 at t/T = 0.80985; rectangle 2.0
    // Ref:     Harris' Shock and Vibration Handbook, chapter 8 (half-sine's maximum derived; rectangle from memory)
    // Note:    steps of T/32: 1e-3
    @ParameterizedTest
    @CsvSource({"HALF_SINE, 0.80985, 1.768458", "RECTANGLE, 0.7, 2.0"})
    void an_undamped_mode_responds_as_the_handbook_says(ShockShape shape, double ratio, double expected) {
        double omega = 400;
        double peak = SwingPeak.of(new Pulse(new Shock(shape, 10, ratio * 2 * Math.PI / omega)), omega, 0);
        assertThat(peak * omega * omega / (10 * 9.80665)).isCloseTo(expected, within(1e-3 * expected));
    }

    @ParameterizedTest
    @CsvSource({"0.05, 0.3", "0.2, 0.8", "0.5, 1.7", "0.9, 0.6"})
    void a_damped_mode_follows_the_equation_stepped_by_runge_and_kutta(double z, double ratio) {
        double omega = 300;
        double duration = ratio * 2 * Math.PI / omega;
        Pulse pulse = new Pulse(new Shock(ShockShape.HALF_SINE, 1, duration));
        double h = duration / 4000;
        double u = 0;
        double v = 0;
        double most = 0;
        for (int i = 0; i < 4000 * (1 + 1 / ratio); i++) {
            double middle = pulse.at((i + 0.5) * h) * 9.80665;
            double vm = v + h / 2 * (-pulse.at(i * h) * 9.80665 - 2 * z * omega * v - omega * omega * u);
            double um = u + h / 2 * v;
            v += h * (-middle - 2 * z * omega * vm - omega * omega * um);
            u += h * vm;
            most = Math.max(most, Math.abs(u));
        }
        assertThat(SwingPeak.of(pulse, omega, z)).isCloseTo(most, within(1e-3 * most));
    }
}
