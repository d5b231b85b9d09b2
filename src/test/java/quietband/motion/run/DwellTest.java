package quietband.motion.run;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;

/** A dwell against the frequency domain, model by model. */
class DwellTest {

    // 0.05 dB of a residual of 1 % of |H_m G| are 5.8e-5 of |H_m G|; the cubics between 96 points a period leave some 1e-7
    private static final double CLOSE = 5e-6;

    @ParameterizedTest
    @CsvSource({"ridge-relay.yaml,x,10.3", "ridge-relay.yaml,y,88", "ridge-relay.yaml,z,1999", "trial-a.yaml,x,61.7",
        "trial-a.yaml,z,507.1"})
    void a_shipped_model_moves_as_the_frequency_domain_says(String model, String axis, double f) {
        assertThat(Examples.worst(Examples.shipped(model), linear(axis, f))).isLessThan(CLOSE);
    }

    private static Dwell.Request linear(String axis, double f) {
        return new Dwell.Request(Axis.of(axis), f, 0.7, 0.2, true);
    }

    private static final String HARD = String.join("\n",
        "oscillator: {carrier: 10 MHz, resonator: {sensitivity: {x: 0.3 ppb/g, y: -0.5 ppb/g, z: 0.2 ppb/g}, position: {x: 4 mm},",
        "  support_resonance: {x: {frequency: 3 kHz, q: 12}, z: {frequency: 1.4 kHz, q: 5}}, "
            + "orientation: {axis: {x: 1, y: 1, z: 0}, angle: 30 deg}}}",
        "platform: {mass: 150 g, size: {x: 50 mm, y: 60 mm, z: 20 mm}, centre_of_gravity: {x: 1 mm, z: 2 mm}, "
            + "modal_damping: 2 %,",
        "  springs: [{name: a, at: [{x: 20 mm, y: 20 mm}, {x: -20 mm, y: 20 mm}, {x: 0 mm, y: -20 mm, z: 3 mm}], "
            + "stiffness: {x: 8 N/mm, y: 9 N/mm, z: 12 N/mm},",
        "    loss_factor: {x: 10 %, z: 30 %}, relaxation: {stiffness_ratio: 0.8, corner: 60 Hz}, "
            + "mass: 14 g, orientation: {axis: y, angle: 20 deg}}]}");

    @ParameterizedTest
    @CsvSource({"x,23", "y,240", "z,611", "x,1733"})
    void loss_relaxation_turns_and_springs_with_waves_in_the_band_are_followed(String axis, double f) {
        // three springs of 14 g: half-wave resonances from 380 Hz on
        assertThat(Examples.worst(Examples.parse(HARD), linear(axis, f))).isLessThan(CLOSE);
    }

    private static String path(String path, String error) {
        return HARD + "\ncancellation: {sensor: {position: {y: 5 mm}, bandwidth: {x: 3 kHz, z: 2 kHz}, "
            + "resonance: {frequency: 9 kHz, q: 2}, "
            + "cross_axis: {xy: 2 %, zx: -1 %}}, path: {" + path + "}, tuning: {slope: -1 ppm/V, bandwidth: 7 kHz}, "
            + "error: {"
            + error + "}}";
    }

    @ParameterizedTest
    @CsvSource({"x,17", "y,333.3", "z,1201"})
    void a_digital_path_that_shares_no_period_with_the_drive_is_followed(String axis, double f) {
        Design d = Examples.parse(path("sample_rate: 7.3 kHz, latency: 113 us, taps: {x: [0.5, 0.3, 0.2], y: [1], z: [1.2, -0.2]}, "
            + "sections: [[0.9, 0.2, 0.1, -0.3, 0.4]], high_pass: {frequency: 3 Hz, order: 3}, low_pass: {frequency: 2.5 kHz, order: 4}",
            "gain: 3 %, phase: {x: 5 deg, y: -8 deg}, delay: {x: 17 us, z: -41 us}"));
        // a rate this low leaves images right above the band
        assertThat(Examples.worst(d, linear(axis, f))).isLessThan(2e-5);
    }

    @ParameterizedTest
    @CsvSource({"x,11", "y,900"})
    void an_analog_path_with_delays_and_a_constant_phase_is_followed(String axis, double f) {
        Design d = Examples.parse(path("latency: 31.7 us, low_pass: {frequency: 20 kHz, order: 2}",
            "gain: {x: -2 %}, phase: 4 deg, delay: {y: 9 us, z: -60 us}"));
        assertThat(Examples.worst(d, linear(axis, f))).isLessThan(CLOSE);
    }

    @Test
    void above_half_the_sample_rate_the_linear_path_takes_nothing() {
        Design d = Examples.parse(path("sample_rate: 3 kHz", "gain: 1 %"));
        Dwell.Result r = Dwell.run(d, linear("y", 1700));
        assertThat(r.sensitivityPerG(Stack.CANCELLED)).isEqualTo(r.sensitivityPerG(Stack.BARE));
    }

    @Test
    void a_constant_phase_alone_leaves_two_sin_of_its_half() {
        Design d = Examples.parse(Examples.oscillator("x"), "cancellation: {sensor: {place: housing}, error: {phase: 1 deg}}");
        // |1 - exp(j 1 deg)| = 2 sin(0.5 deg) = -35.16 dB (derived); the sign of y's imaginary part tells a lead from a lag
        Dwell.Result r = Dwell.run(d, linear("x", 100));
        assertThat(r.sensitivityPerG(Stack.CANCELLED)).isCloseTo(2e-9 * Math.sin(Math.toRadians(0.5)),
            org.assertj.core.data.Percentage.withPercentage(0.01));
        assertThat(r.im()[r.stacks().indexOf(Stack.CANCELLED)]).isNegative();
    }

    @Test
    void an_undamped_platform_has_a_periodic_state_off_its_resonance_and_none_on_it() {
        Design d = Examples.parse(Examples.oscillator("x"), Examples.mass(100, "", ""));
        // T = 1/(1 - r^2), r = 1.5: -0.8; closed form
        Dwell.Result r = Dwell.run(d, linear("x", 150));
        assertThat(r.re()[1]).isCloseTo(-0.8e-9, org.assertj.core.data.Percentage.withPercentage(1e-4));
        assertThat(r.phaseDeg(Stack.ISOLATED)).isCloseTo(180, org.assertj.core.data.Offset.offset(1e-4));
    }
}
