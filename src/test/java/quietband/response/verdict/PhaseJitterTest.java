package quietband.response.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.demand.RequirementResult;
import quietband.model.Axis;
import quietband.model.Stack;
import quietband.response.Models;

/** Phase jitter, sidebands of tones and the phase-noise limit of a bolted-down oscillator, from their closed forms. */
class PhaseJitterTest {

    /** G = 0.3, -0.4, 1.2 ppb/g at 10 MHz, judged at 200 MHz, flat density of 0.02 g^2/Hz from 5 Hz to 4 kHz. */
    private static Assessment assessed(String oscillator, String vibration, String requirement) {
        return Assessor.assess(Models.of(Models.oscillator("").replace("carrier: 10 MHz", "carrier: 10 MHz, output: 200 MHz" + oscillator)
            + "vibration: {random: {points: [{frequency: 5 Hz, density: 0.02 g^2/Hz}, {frequency: 4 kHz, density: 0.02 g^2/Hz}]}"
            + vibration + "}\nrequirement: {" + requirement + "}\n"));
    }

    private static RequirementResult result(Assessment a, String name) {
        return a.requirements().stream().filter(r -> r.name().equals(name)).findFirst().orElseThrow();
    }

    // System:  L = f0^2/(2 f^2) |y|^2 S, so 2 integral L df = f0^2 |y|^2 S (1/f1 - 1/f2)
    // Note:    three Gauss nodes in each of 100 steps a decade: (0.023/2)^6/15750 of an f^-1 in log f; 1e-12 is rounding
    @ParameterizedTest
    @CsvSource({"20, 900, ", "10, 2000, together"})
    void jitter_of_a_flat_profile_is_its_integral(double from, double to, String apply) {
        Assessment a = assessed("", apply == null ? "" : ", apply: together", "jitter: {limit: 1 mrad, from: " + from + " Hz, to: "
            + to + " Hz}");
        double y = apply == null ? 1.2e-9 : 1.3e-9;
        double expected = 200e6 * y * Math.sqrt(0.02 * (1 / from - 1 / to));
        assertThat(a.worstJitterRad()).isCloseTo(expected, within(1e-11 * expected));
        RequirementResult r = result(a, "jitter");
        assertThat(r.axis()).isEqualTo(apply == null ? "z" : "all");
        assertThat(r.marginDb()).isCloseTo(20 * Math.log10(1e-3 / expected), within(1e-9));
    }

    @Test
    void static_noise_counts_in_jitter_at_the_output() {
        // -150 dBc/Hz at the carrier is 20^2 times as much power at the output; white over 100 to 1100 Hz
        Assessment a = assessed(", static_phase_noise: [{offset: 1 Hz, level: -150 dBc/Hz}]", ", axes: [x]",
            "jitter: {limit: 1 mrad, from: 100 Hz, to: 1100 Hz}");
        double vibration = Math.pow(200e6 * 0.3e-9, 2) * 0.02 * (1 / 100.0 - 1 / 1100.0);
        double still = 2 * 400e-15 * 1000;
        double expected = Math.sqrt(vibration + still);
        assertThat(a.worstJitterRad()).isCloseTo(expected, within(1e-11 * expected));
    }

    // System:  against a limit that falls by 10 dB a decade L falls by 20: the worst point is the lower end of the band
    @Test
    void phase_noise_is_judged_at_the_output_where_it_is_nearest_its_limit() {
        Assessment a = assessed("", "", "band: {from: 40 Hz, to: 900 Hz}, phase_noise: [{offset: 10 Hz, limit: -60 dBc/Hz}, "
            + "{offset: 1 kHz, limit: -80 dBc/Hz}]");
        RequirementResult r = result(a, "phase_noise");
        double total = 10 * Math.log10(Math.pow(200e6 / 40 * 1.2e-9, 2) / 2 * 0.02);
        double limit = -60 - 10 * Math.log10(4);
        assertThat(r.frequencyHz()).isEqualTo(40);
        assertThat(r.value()).isCloseTo(total, within(1e-9));
        assertThat(r.marginDb()).isCloseTo(limit - total, within(1e-9));
        assertThat(r.axis()).isEqualTo("z");
    }

    // Result:  20 log10(|y| A f0/(2 f)) up to an index of 0.1; above it J1/J0, for 0.6: 20 log10(0.28670/0.91200) = -10.0514
    // Ref:     Abramowitz and Stegun, table 9.1 (memory), checked by the series
    @Test
    void tones_have_their_level_at_the_output_and_the_bessel_ratio_when_the_index_is_large() {
        Assessment a = assessed("", ", tones: [{name: fan, frequency: 50 Hz, peak: 4 g, axis: y}, {name: slow, frequency: 10 Hz, "
            + "peak: 25 g, axis: z}]", "tones: [{frequency: 10 Hz, limit: -30 dBc}, {frequency: 1 kHz, limit: -30 dBc}]");
        ToneSideband fan = a.tones().get(0);
        assertThat(fan.index().get(Stack.BARE)).isCloseTo(0.4e-9 * 4 * 200e6 / 50, within(1e-15));
        assertThat(fan.levelDbc().get(Stack.BARE)).isCloseTo(20 * Math.log10(0.0064 / 2), within(1e-9));
        assertThat(fan.exact(Stack.BARE)).isFalse();
        ToneSideband slow = a.tones().get(1);
        assertThat(slow.index().get(Stack.BARE)).isCloseTo(0.6, within(1e-12));
        assertThat(slow.levelDbc().get(Stack.BARE)).isCloseTo(-10.0514, within(1e-3));
        RequirementResult r = result(a, "tones");
        assertThat(r.met()).isFalse();
        assertThat(r.frequencyHz()).isEqualTo(10);
        assertThat(r.marginDb()).isCloseTo(-30 + 10.0514, within(1e-3));
        assertThat(a.warnings()).anySatisfy(w -> assertThat(w).contains("along z").contains("index of 0.6").contains("J1/J0"));
    }

    @Test
    void a_tone_without_an_axis_drives_each_of_them() {
        Assessment a = assessed("", ", tones: [{frequency: 80 Hz, peak: 1 g}]", "tones: [{frequency: 10 Hz, limit: -60 dBc}]");
        assertThat(a.tones()).extracting(ToneSideband::axis).containsExactly(Axis.X, Axis.Y, Axis.Z);
        // the worst one is judged: 1.2 ppb/g
        assertThat(result(a, "tones").value()).isCloseTo(20 * Math.log10(1.2e-9 * 200e6 / 160), within(1e-9));
    }
}
