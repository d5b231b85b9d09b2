package quietband.response.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import quietband.demand.RequirementResult;
import quietband.model.Design;
import quietband.response.Models;

/** How much of the sensors' and the port's ranges is used, bolted down: what the housing does goes straight through. */
class RangeUseTest {

    // the housing: 0.02 g^2/Hz from 20 Hz to 1.02 kHz on x, a quarter of it on y, nothing on z: 20 and 5 g^2
    private static final String RANDOM = "random: {x: {points: [{frequency: 20 Hz, density: 0.02 g^2/Hz}, {frequency: 1.02 kHz, "
        + "density: 0.02 g^2/Hz}]}, y: {points: [{frequency: 20 Hz, density: 0.005 g^2/Hz}, {frequency: 1.02 kHz, "
        + "density: 0.005 g^2/Hz}]}}";
    private static final String TONES = ", tones: [{frequency: 50 Hz, peak: 2 g, axis: x}, {frequency: 75 Hz, peak: 1 g}]";

    private static Design design(String apply, String cross) {
        return Models.of(Models.oscillator("") + "cancellation: {sensor: {place: housing, range: {x: 40 g, y: 20 g, z: 1.5 g}" + cross
            + "}, tuning: {slope: -2 ppb/V, range: 3 V}}\nvibration: {" + apply + RANDOM + TONES + "}\n");
    }

    private static RequirementResult result(Design design, String name) {
        List<RequirementResult> all = Assessor.assess(design).requirements();
        return all.stream().filter(r -> r.name().equals(name)).findFirst().orElseThrow();
    }

    // Result:  x sensor 3 sqrt(20) + 2 + 1 = 16.42 g of 40; y 3 sqrt(5) + 1 = 7.71 g of 20; z 1 g of 1.5: the largest share is named
    @Test
    void a_sensor_uses_three_sigma_of_its_axis_and_the_peaks_of_the_tones() {
        RequirementResult r = result(design("", ""), "sensor_range");
        assertThat(r.axis()).isEqualTo("z");
        assertThat(r.value()).isCloseTo(1, within(1e-9));
        assertThat(r.usedShare()).isCloseTo(1 / 1.5, within(1e-9));
        RequirementResult x = result(Models.of(Models.oscillator("") + "cancellation: {sensor: {place: housing, range: {x: 15 g, y: 20 g, "
            + "z: 9 g}}}\nvibration: {" + RANDOM + TONES + "}\n"), "sensor_range");
        assertThat(x.axis()).isEqualTo("x");
        assertThat(x.value()).isCloseTo(3 * Math.sqrt(20) + 3, within(1e-9));
        assertThat(x.met()).isFalse();
    }

    // Result:  with 5 % of x read on the z sensor: 0.05 (3 sqrt(20) + 3) = 0.8208 g; that of its own tone, 1 g, stays the larger
    @Test
    void cross_axes_add_only_when_axes_act_together() {
        RequirementResult apart = result(design("", ", cross_axis: {zx: 5 %}"), "sensor_range");
        assertThat(apart.value()).isCloseTo(1, within(1e-9));
        RequirementResult together = result(design("apply: together, ", ", cross_axis: {zx: 5 %}"), "sensor_range");
        // powers of the noise add, peaks of the tones add: 3 x 0.05 sqrt(20) + 0.05 x 3 + 1
        assertThat(together.value()).isCloseTo(0.15 * Math.sqrt(20) + 0.15 + 1, within(1e-9));
    }

    // Result:  0.3, 0.4 and 1.2 ppb/g over 2 ppb/V: 0.15, 0.2 and 0.6 V per g, whatever the slope's sign
    @Test
    void the_port_swings_by_the_sensitivity_over_its_slope() {
        RequirementResult apart = result(design("", ""), "tuning_swing");
        assertThat(apart.value()).isCloseTo(Math.max(0.15 * (3 * Math.sqrt(20) + 3), 0.6), within(1e-9));
        assertThat(apart.usedShare()).isCloseTo(apart.value() / 3, within(1e-12));
        RequirementResult together = result(design("apply: together, ", ""), "tuning_swing");
        double sigma = Math.sqrt(0.15 * 0.15 * 20 + 0.2 * 0.2 * 5);
        assertThat(together.value()).isCloseTo(3 * sigma + 0.15 * 3 + 0.2 + 0.6, within(1e-9));
    }

    @Test
    void ranges_that_are_not_written_are_not_judged() {
        Design open = Models.of(Models.oscillator("") + "cancellation: {sensor: {place: housing}, tuning: {slope: 2 ppb/V}}\nvibration: {"
            + RANDOM + "}\n");
        assertThat(Assessor.assess(open).requirements()).isEmpty();
        Design rangeOnly = Models.of(Models.oscillator("") + "cancellation: {sensor: {place: housing}, tuning: {range: 2 V}}\nvibration: {"
            + RANDOM + "}\n");
        // without a slope nobody knows the voltage
        assertThat(Assessor.assess(rangeOnly).requirements()).isEmpty();
    }
}
