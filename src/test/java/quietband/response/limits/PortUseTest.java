package quietband.response.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import quietband.demand.PhaseNoise;
import quietband.demand.RequirementResult;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.response.Models;
import quietband.response.verdict.Assessor;

/** What the tuning port is asked for and adds, against closed forms. */
class PortUseTest {

    private static final double[] OFFSETS = {100, 1000};

    // 0.4 ppb/g on y and 5 ppb/V, ideal path: 0.08 V per g; G along x and z is 0.3 and 1.2 ppb/g
    private static Design bolted(String path, String tuning, String vibration) {
        return Models.of(Models.oscillator("") + "cancellation: {sensor: {range: 20 g, noise: 25 ug/rtHz}" + path
            + ", tuning: {slope: 5 ppb/V"
            + tuning + "}}\nvibration: {" + vibration + "}\n");
    }

    @Test
    void a_flat_profile_and_a_tone_swing_as_their_closed_forms() {
        Design design = bolted("", ", range: 2 V", "axes: [y], random: {points: [{frequency: 20 Hz, density: 0.04 g^2/Hz}, "
            + "{frequency: 2 kHz, density: 0.04 g^2/Hz}]}, tones: [{frequency: 70 Hz, peak: 3 g, axis: y}]");
        PortUse use = PortUse.of(design, OFFSETS);
        assertThat(use.swings()).hasSize(1);
        PortUse.Swung s = use.swings().get(0);
        double sigma = 0.4 / 5 * Math.sqrt(0.04 * 1980);
        // the integral of a constant is exact
        assertThat(s.sigmaV()).isCloseTo(sigma, within(1e-9));
        assertThat(s.tonesV()).isCloseTo(0.24, within(1e-12));
        assertThat(s.peakV()).isCloseTo(3 * sigma + 0.24, within(1e-9));
        // the same as the requirement on the swing
        RequirementResult swing = Assessor.assess(design).requirements().stream().filter(r -> r.name().equals("tuning_swing")).findFirst()
            .orElseThrow();
        assertThat(swing.usedShare()).isCloseTo(s.peakV() / 2, within(1e-9));
    }

    @Test
    void the_second_harmonic_is_that_of_a_squared_cosine() {
        Design design = bolted("", ", curvature: 20 %/V", "tones: [{frequency: 70 Hz, peak: 3 g, axis: y}]");
        PortUse.Harmonic h = PortUse.of(design, OFFSETS).tones().get(0);
        double second = 0;
        double mean = 0;
        int n = 64;
        for (int k = 0; k < n; k++) {
            double t = 2 * Math.PI * k / n;
            double v = 0.24 * Math.cos(t);
            double y = 5e-9 * (v + 0.2 * v * v / 2);
            second += 2 * y * Math.cos(2 * t) / n;
            mean += y / n;
        }
        assertThat(h.axis()).isEqualTo(Axis.Y);
        assertThat(h.amplitude()).isCloseTo(second, within(1e-20));
        // index y f0/f at 10 MHz and 140 Hz; a small one: 20 log10(index/2)
        assertThat(h.levelDbc()).isCloseTo(20 * Math.log10(second * 10e6 / 140 / 2), within(1e-9));
        assertThat(PortUse.of(design, OFFSETS).swings().stream().filter(s -> s.row().equals("y")).findFirst().orElseThrow().shift())
            .isCloseTo(mean, within(1e-20));
    }

    @Test
    void quantiser_and_reference_have_the_densities_of_their_closed_forms() {
        Design design = bolted(", path: {sample_rate: 48 kHz, converter_bits: 16}", ", noise: 20 nV/rtHz", "gravity: -z");
        PortUse.Noise n = PortUse.of(design, OFFSETS).noise().get(0);
        double q = 40.0 / 65536;
        double hold = Math.sin(Math.PI * 100 / 48e3) / (Math.PI * 100 / 48e3);
        // q^2/12 spread over fs/2 = q^2/(6 fs), times the weights squared, 0.3^2 + 0.4^2 + 1.2^2 = 1.69 ppb^2; L = (f0/f)^2/2 S_y
        double scale = 1e10 / 2;
        double quantised = scale * 1.69e-18 * q * q / (6 * 48e3) * hold * hold;
        assertThat(n.quantiser()).isCloseTo(quantised, within(1e-9 * quantised));
        double reference = scale * Math.pow(5e-9 * 20e-9, 2);
        assertThat(n.reference()).isCloseTo(reference, within(1e-9 * reference));
        double sensed = scale * 1.69e-18 * Math.pow(25e-6, 2) * hold * hold;
        assertThat(n.sensor()).isCloseTo(sensed, within(1e-9 * sensed));
        PhaseNoise all = new PhaseNoise(design);
        assertThat(n.sensor() + n.quantiser()).isCloseTo(all.sensor(100), within(1e-9 * sensed));
    }

    @Test
    void curvature_makes_of_flat_noise_a_triangle_whose_integral_is_twice_the_square_of_its_variance() {
        double[] f = {0, 500, 1000};
        CurvatureNoise bent = new CurvatureNoise(f, new double[] {3, 3, 3});
        // S^2 times what two bands of width 2B share when one is moved by f: 2 B - f
        for (double offset : new double[] {1, 400, 1500, 1999}) {
            assertThat(bent.at(offset)).isCloseTo(9 * (2000 - offset), within(1e-6));
        }
        assertThat(bent.at(2001)).isZero();
        double variance = 3000;
        assertThat(9 * 2000.0 * 2000 / 2).isEqualTo(2 * variance * variance);
    }

    @Test
    void the_noise_of_curvature_reaches_the_output_with_half_slope_times_curvature() {
        Design design = bolted("", ", curvature: 20 %/V", "axes: [y], random: {points: [{frequency: 20 Hz, density: 0.04 g^2/Hz}, "
            + "{frequency: 2 kHz, density: 0.04 g^2/Hz}]}");
        PortUse.Noise n = PortUse.of(design, OFFSETS).noise().get(1);
        double s = 0.08 * 0.08 * 0.04;
        // |u| and |1000 - u| both within 20 to 2000 Hz: -1000..-20, 20..980, 1020..2000
        double squared = s * s * (980 + 960 + 980);
        double expected = Math.pow(1e4, 2) / 2 * Math.pow(5e-9 * 0.2 / 2, 2) * squared;
        assertThat(n.bent()).isCloseTo(expected, within(1e-6 * expected));
    }

    @Test
    void without_a_slope_nothing_is_said_of_the_swing() {
        Design design = Models.of(Models.oscillator("") + "cancellation: {sensor: {noise: 25 ug/rtHz}}\n");
        PortUse use = PortUse.of(design, OFFSETS);
        assertThat(use.known()).isFalse();
        assertThat(use.swings()).isEmpty();
        assertThat(Optional.of(use.noise().get(0).sensor())).hasValueSatisfying(v -> assertThat(v).isPositive());
    }
}
