package quietband.demand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.response.Models;

/** Phase noise at the output and the sensitivity it allows, from their formulas in decibels. */
class PhaseNoiseTest {

    private static final String CANCELLATION = "cancellation: {sensor: {place: housing, "
        + "noise: {x: 30 ug/rtHz, y: 20 ug/rtHz, z: 10 ug/rtHz}}, "
        + "path: {low_pass: {frequency: 700 Hz, order: 2}}, tuning: {slope: -3 ppb/V, noise: 90 nV/rtHz, bandwidth: 900 Hz}, "
        + "error: {gain: {x: 5 %}}}\n";

    private static Design design(String apply, String limit) {
        return Models.of(Models.oscillator("").replace("carrier: 10 MHz", "carrier: 10 MHz, output: 1 GHz, static_phase_noise: "
            + "[{offset: 10 Hz, level: -135 dBc/Hz}, {offset: 1 kHz, level: -155 dBc/Hz}]") + CANCELLATION
            + "vibration: {" + apply + "axes: [x, z], random: {x: {points: [{frequency: 10 Hz, density: 0.01 g^2/Hz}, "
            + "{frequency: 1 kHz, density: 0.04 g^2/Hz}]}, "
            + "z: {points: [{frequency: 10 Hz, density: 0.09 g^2/Hz}, {frequency: 500 Hz, density: 0.09 g^2/Hz}]}}}\n"
            + "requirement: {band: {from: 20 Hz, to: 900 Hz}, residual: from_phase_noise, phase_noise: [{offset: 10 Hz, limit: " + limit
            + " dBc/Hz}]}\n");
    }

    // Result:  L = 20 log10(|y| f0/f) + 10 log10 S - 3.01 dB: at 100 Hz a density of 0.02 g^2/Hz on x (log-log middle), 0.09 on z
    // Note:    rounding
    @Test
    void vibration_makes_half_the_square_of_frequency_over_offset() {
        PhaseNoise noise = new PhaseNoise(design("", "-60"));
        assertThat(noise.rows()).extracting(PhaseNoise.Row::label).containsExactly("x", "z");
        double[] squared = {4e-18, 1, 1e-18};
        double x = 20 * Math.log10(2e-9 * 1e9 / 100) + 10 * Math.log10(0.02) - 10 * Math.log10(2);
        assertThat(Decibels.ofPower(noise.vibration(noise.rows().get(0), 100, squared))).isCloseTo(x, within(1e-9));
        PhaseNoise both = new PhaseNoise(design("apply: together, ", "-60"));
        assertThat(both.rows()).extracting(PhaseNoise.Row::label).containsExactly("all");
        double all = 10 * Math.log10((4e-18 * 0.02 + 1e-18 * 0.09) / 2) + 140;
        // y is not driven: its square of 1 counts nothing
        assertThat(Decibels.ofPower(both.vibration(both.rows().get(0), 100, squared))).isCloseTo(all, within(1e-9));
        // the profile of z ends at 500 Hz
        assertThat(noise.vibration(noise.rows().get(1), 600, squared)).isZero();
    }

    // Result:  -145 dBc/Hz in the middle of the decades is -105 at a hundred times the frequency; constant outside the points
    @Test
    void static_noise_rises_by_the_square_of_the_multiplication() {
        PhaseNoise noise = new PhaseNoise(design("", "-60"));
        assertThat(Decibels.ofPower(noise.staticNoise(100))).isCloseTo(-105, within(1e-9));
        assertThat(Decibels.ofPower(noise.staticNoise(1))).isCloseTo(-95, within(1e-9));
        assertThat(Decibels.ofPower(noise.staticNoise(1e5))).isCloseTo(-115, within(1e-9));
    }

    // System:  S_y = sum w^2 (1 + gain)^2 n^2 |low pass|^2 |port|^2; second-order Butterworth |H|^2 = 1/(1 + (f/fc)^4),
    //          port 1/(1 + (f/fp)^2)
    @ParameterizedTest
    @ValueSource(doubles = {25, 300, 850})
    void electronics_add_their_noise_only_where_the_correction_is_on(double f) {
        PhaseNoise noise = new PhaseNoise(design("", "-60"));
        double port = 1 / (1 + f * f / (900 * 900));
        double low = 1 / (1 + Math.pow(f / 700, 4));
        double sensed = Math.pow(0.3e-9 * 1.05 * 30e-6, 2) + Math.pow(0.4e-9 * 20e-6, 2) + Math.pow(1.2e-9 * 10e-6, 2);
        double scale = Math.pow(1e9 / f, 2) / 2;
        assertThat(noise.sensor(f)).isCloseTo(scale * sensed * low * port, within(1e-12 * noise.sensor(f)));
        assertThat(noise.tuning(f)).isCloseTo(scale * Math.pow(3e-9 * 90e-9, 2) * port, within(1e-12 * noise.tuning(f)));
        assertThat(noise.floor(Stack.BARE, f)).isEqualTo(noise.staticNoise(f));
        assertThat(noise.floor(Stack.CANCELLED, f)).isCloseTo(noise.staticNoise(f) + noise.sensor(f) + noise.tuning(f),
            within(1e-15 * noise.floor(Stack.CANCELLED, f)));
    }

    // the written limit less the floor, as power, over what drives: rounding
    @ParameterizedTest
    @CsvSource({"'', -60", "'apply: together, ', -60", "'', -85"})
    void what_phase_noise_allows_is_the_limit_of_the_residual(String apply, String dbc) {
        Design design = design(apply, dbc);
        ResidualLimit residual = new ResidualLimit(design);
        assertThat(residual.asked()).isTrue();
        for (double f : new double[] {22, 100, 333, 499, 501, 880}) {
            for (Axis axis : Axis.ALL) {
                double allowed = allowed(design, axis, f, Double.parseDouble(dbc), !apply.isEmpty());
                assertThat(residual.at(axis, f)).as("%s at %s Hz", axis, f).isCloseTo(allowed, within(1e-9 * Math.min(allowed, 1)));
            }
            double least = Math.min(residual.at(Axis.X, f), residual.at(Axis.Z, f));
            assertThat(residual.vector(f)).isEqualTo(least);
        }
    }

    private static double allowed(Design design, Axis axis, double f, double dbc, boolean together) {
        double x = f <= 1000 ? 0.01 * Math.pow(f / 10, Math.log(4) / Math.log(100)) : 0;
        double z = f <= 500 ? 0.09 : 0;
        double driven = together ? x + z : axis == Axis.X ? x : z;
        if (axis == Axis.Y || driven == 0) {
            return Double.POSITIVE_INFINITY;
        }
        PhaseNoise noise = new PhaseNoise(design);
        double left = Math.pow(10, dbc / 10) - noise.staticNoise(f) - noise.sensor(f) - noise.tuning(f);
        return left <= 0 ? 0 : Math.sqrt(2 * left / driven) * f / 1e9;
    }

    @Test
    void without_a_limit_nothing_is_asked() {
        Design design = Models.of(Models.oscillator(""));
        assertThat(new ResidualLimit(design).asked()).isFalse();
        assertThat(new PhaseNoise(design).allowedPerG(new PhaseNoise(design).rows().get(0), 100)).isInfinite();
    }

    // Result:  a factor of 2 in amplitude is 6.0206 dB, in power 3.0103 dB; margins end at 300 dB, curves at -120 dB below
    @Test
    void amplitudes_count_20_and_powers_10_decibels_a_decade() {
        assertThat(Decibels.over(2e-9, 1e-9)).isCloseTo(6.0206, within(1e-4));
        assertThat(Decibels.margin(2e-9, 1e-9)).isCloseTo(-6.0206, within(1e-4));
        assertThat(Decibels.ofPower(2)).isCloseTo(3.0103, within(1e-4));
        assertThat(Decibels.ofPower(0)).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(Decibels.margin(0, 1e-9)).isEqualTo(300);
        assertThat(Decibels.margin(1e-9, Double.POSITIVE_INFINITY)).isEqualTo(300);
        assertThat(Decibels.margin(1, 1e-20)).isEqualTo(-300);
        assertThat(Decibels.over(1e-20, 1)).isEqualTo(-120);
        assertThat(Decibels.over(0, 1)).isEqualTo(-120);
        RequirementResult share = RequirementResult.share("travel", 1.5, 1.25, "mm", "x");
        assertThat(share.met()).isFalse();
        assertThat(share.usedShare()).isEqualTo(1.2);
        assertThat(share.hasMargin()).isFalse();
        assertThat(RequirementResult.share("travel", 0, 0, "mm", "x").met()).isTrue();
        assertThat(RequirementResult.margin("residual", -0.01, 1, 1, "ppb/g", 10, "x").met()).isFalse();
    }
}
