package quietband.demand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Vibration.Tone;
import quietband.response.Models;

class ToneDemandTest {

    // oscillator of 10 MHz multiplied to 100 MHz; limit -60 dBc
    private static final Design DESIGN = Models.of("quietband: 1\noscillator: {carrier: 10 MHz, output: 100 MHz, resonator: "
        + "{sensitivity: {x: 1 ppb/g, y: 1 ppb/g, z: 1 ppb/g}}}\nvibration: {tones: [{frequency: 50 Hz, peak: 2 g, axis: y}, "
        + "{frequency: 80 Hz, peak: 1 g}]}\nrequirement: {band: {from: 20 Hz, to: 200 Hz}, tones: [{frequency: 20 Hz, limit: -60 dBc}, "
        + "{frequency: 200 Hz, limit: -60 dBc}]}\n");
    private static final Tone TONE = DESIGN.vibration().tones().get(0);

    // Result:  1e-9/g x 2 g x 100 MHz/50 Hz = 4 mrad; 20 log10(0.002) = -53.979 dBc, 6.021 dB above the limit (by hand)
    @Test
    void a_tone_makes_half_its_index_at_the_output() {
        ToneDemand demand = new ToneDemand(DESIGN);
        assertThat(demand.index(TONE, 1e-9)).isCloseTo(4e-3, within(1e-15));
        assertThat(demand.limitDbc(TONE)).isCloseTo(-60, within(1e-12));
        assertThat(demand.overDb(TONE, 1e-9)).isCloseTo(6.0206, within(1e-4));
    }

    @Test
    void a_tone_drives_its_axis_or_each() {
        assertThat(TONE.axes()).containsExactly(Axis.Y);
        assertThat(DESIGN.vibration().tones().get(1).axes()).isEqualTo(Axis.ALL);
    }

    @Test
    void without_a_limit_nothing_is_over_it() {
        Design open = Models.of(Models.oscillator(""));
        assertThat(new ToneDemand(open).limitDbc(TONE)).isNaN();
        assertThat(new ToneDemand(open).overDb(TONE, 1e-9)).isNaN();
    }
}
