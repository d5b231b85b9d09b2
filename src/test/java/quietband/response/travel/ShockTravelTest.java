package quietband.response.travel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Vec;
import quietband.model.Vibration.Shock;
import quietband.model.Vibration.ShockShape;
import quietband.platform.Assembly;
import quietband.response.Models;
import quietband.vibration.Pulse;

class ShockTravelTest {

    // System:  one axis, undamped, natural period T, base pulse of length t
    // Result:  largest response over the static one: half-sine 1.768458 at t/T = 0.80985; rectangle 2.0
    // Ref:     Harris' Shock and Vibration Handbook, chapter 8 (maximum derived; rectangle from memory)
    // Note:    the rate is that of four springs, omega^2 = k/m; displacement is peak ratio times a/omega^2.
    //          1e-6: digits of the value; between 20 steps a period the polynomial is within 2e-8
    @ParameterizedTest
    @CsvSource({"HALF_SINE, 0.80985, 1.768458", "RECTANGLE, 0.7, 2.0"})
    void the_largest_response_to_a_pulse_is_the_handbooks(ShockShape shape, double ratio, double expected) {
        Design d = Models.of(Models.oscillator("") + Models.platform("stiffness: 20 N/mm", ""));
        double omega = Math.sqrt(80e3 / 0.21);
        Shock shock = new Shock(shape, 10, ratio * 2 * Math.PI / omega);
        Vec peak = new ShockTravel(new Assembly(d.platform().orElseThrow())).peak(shock, Axis.Y, List.of(Vec.ZERO));
        assertThat(peak.y() * omega * omega / (10 * 9.80665)).isCloseTo(expected, within(1e-6 * expected));
        assertThat(peak.x()).isLessThan(1e-12);
    }

    // Result:  steps twenty times as fine give the same peaks: all modes, loss and a centre of gravity aside
    // Note:    1e-7: (w h)^6 / 46080 is 2e-8 of the highest mode's part at 20 steps a period
    @ParameterizedTest
    @CsvSource({"HALF_SINE, 11", "SAWTOOTH, 6", "RECTANGLE, 3"})
    void finer_steps_change_no_peak(ShockShape shape, double milliseconds) {
        Design d = Models.of(Models.oscillator("") + Models.platform("stiffness: 20 N/mm, loss_factor: 0.1",
            ", centre_of_gravity: {x: 4 mm, y: -2 mm, z: 1 mm}"));
        Shock shock = new Shock(shape, 20, milliseconds * 1e-3);
        Assembly assembly = new Assembly(d.platform().orElseThrow());
        List<Vec> points = List.of(new Vec(0.02, -0.03, 0.01), new Vec(-0.02, 0.01, 0));
        for (Axis axis : Axis.ALL) {
            Vec coarse = new ShockTravel(assembly).peak(shock, axis, points);
            Vec fine = new ShockTravel(assembly, 12, 400).peak(shock, axis, points);
            for (Axis along : Axis.ALL) {
                assertThat(coarse.get(along)).isCloseTo(fine.get(along), within(1e-7 * fine.get(axis)));
            }
        }
    }

    // System:  the same, by another road: Duhamel's integral of the pulse as a function of time
    // Note:    midpoint rule with 400 steps a period, whose edges fall on those of the pulse: second order in 1/60 rad, 1e-4
    @ParameterizedTest
    @CsvSource({"HALF_SINE, 1.5", "HALF_SINE, 0.3", "TRIANGLE, 1", "TRIANGLE, 2.6", "SAWTOOTH, 0.6", "SAWTOOTH, 2"})
    void any_pulse_is_its_duhamel_integral(ShockShape shape, double ratio) {
        Design d = Models.of(Models.oscillator("") + Models.platform("stiffness: 20 N/mm", ""));
        double omega = Math.sqrt(80e3 / 0.21);
        double period = 2 * Math.PI / omega;
        Shock shock = new Shock(shape, 10, ratio * period);
        double peak = new ShockTravel(new Assembly(d.platform().orElseThrow())).peak(shock, Axis.X, List.of(Vec.ZERO)).x();
        Pulse pulse = new Pulse(shock);
        double h = period / 400;
        int n = (int) ((ratio + 1.5) * 400);
        double sine = 0;
        double cosine = 0;
        double most = 0;
        for (int i = 1; i <= n; i++) {
            double middle = (i - 0.5) * h;
            sine += pulse.at(middle) * Math.sin(omega * middle) * h;
            cosine += pulse.at(middle) * Math.cos(omega * middle) * h;
            most = Math.max(most, Math.abs(Math.sin(omega * i * h) * cosine - Math.cos(omega * i * h) * sine) / omega);
        }
        assertThat(peak).isCloseTo(most * 9.80665, within(3e-4 * peak));
    }
}
