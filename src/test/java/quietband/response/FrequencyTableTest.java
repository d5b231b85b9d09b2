package quietband.response;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.demand.PhaseNoise;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.platform.Assembly;
import quietband.spectrum.LogGrid;

/** Tables over frequency, grids of the program's own, and integrals of several parts in one pass. */
class FrequencyTableTest {

    private static final Design DESIGN = Models.of(Models.oscillator(", support_resonance: {z: {frequency: 1.7 kHz, q: 300}}")
        .replace("carrier: 10 MHz", "carrier: 10 MHz, output: 100 MHz, static_phase_noise: [{offset: 30 Hz, level: -150 dBc/Hz}]")
        + Models.platform("stiffness: 20 N/mm, damping: 0.2 N*s/m", ", centre_of_gravity: {x: 2 mm, y: 1 mm, z: 3 mm}")
        + "cancellation: {sensor: {position: {x: 5 mm}, noise: 20 ug/rtHz, resonance: {frequency: 900 Hz, q: 40}}, "
        + "path: {sample_rate: 30 kHz, latency: 20 us, sections: [[1, 0, 0, -1.9, 0.98]]}}\n"
        + "vibration: {axes: [x, z], random: {points: [{frequency: 20 Hz, density: 0.01 g^2/Hz}, {frequency: 777 Hz, "
        + "density: 0.02 g^2/Hz}]}}\nrequirement: {phase_noise: [{offset: 55 Hz, limit: -90 dBc/Hz}, {offset: 555 Hz, "
        + "limit: -100 dBc/Hz}]}\n");

    @Test
    void threads_and_the_order_of_its_frequencies_change_no_row() {
        double[] f = LogGrid.between(200, 10, 2000);
        FrequencyTable one = FrequencyTable.of(DESIGN, f, 1);
        double[] back = new double[f.length];
        Arrays.setAll(back, i -> f[f.length - 1 - i]);
        FrequencyTable four = FrequencyTable.of(DESIGN, back, 4);
        for (int i = 0; i < f.length; i++) {
            FrequencyTable.Row a = one.rows().get(i);
            FrequencyTable.Row b = four.rows().get(f.length - 1 - i);
            assertThat(b.frequencyHz()).isEqualTo(a.frequencyHz());
            assertThat(b.residualPerG()).isDeepEqualTo(a.residualPerG());
            assertThat(b.vibration()).isDeepEqualTo(a.vibration());
            assertThat(b.floor()).isEqualTo(a.floor());
            assertThat(b.contributions().get(0).alone()).isEqualTo(a.contributions().get(0).alone());
        }
    }

    // each column by its own formula; rounding
    @Test
    void a_row_is_what_the_stacks_do_at_its_frequency() {
        FrequencyTable table = FrequencyTable.of(DESIGN, new double[] {47, 900}, 2);
        assertThat(table.stacks()).containsExactly(Stack.BARE, Stack.ISOLATED, Stack.CANCELLED, Stack.COMBINED);
        assertThat(table.noiseRows()).extracting(PhaseNoise.Row::label).containsExactly("x", "z");
        FrequencyTable.Row row = table.rows().get(0);
        ResidualResponse response = new ResidualResponse(DESIGN);
        double density = 0.01 * Math.pow(47 / 20.0, Math.log(2) / Math.log(777 / 20.0));
        for (int s = 0; s < 4; s++) {
            double[] y = row.residualPerG()[s];
            for (Axis axis : Axis.ALL) {
                assertThat(y[axis.ordinal()]).isCloseTo(response.magnitude(table.stacks().get(s), axis, 47), within(1e-12 * 1e-9));
            }
            assertThat(row.vectorPerG(s)).isCloseTo(Math.sqrt(y[0] * y[0] + y[1] * y[1] + y[2] * y[2]), within(1e-21));
            double noise = Math.pow(1e8 / 47 * y[2], 2) / 2 * density;
            assertThat(row.vibration()[s][1]).isCloseTo(noise, within(1e-9 * noise));
        }
        // static noise a hundred times as strong at ten times the frequency; the limit log-log between its points
        assertThat(row.floor()[0]).isCloseTo(1e-13, within(1e-22));
        assertThat(row.floor()[3]).isCloseTo(1e-13 + row.sensor() + row.tuning(), within(1e-22));
        assertThat(row.limitDbc()).isEqualTo(-90);
        assertThat(table.rows().get(1).limitDbc()).isEqualTo(-100);
        // above 777 Hz nothing drives, and nothing limits
        assertThat(table.rows().get(1).allowedPerG()[0]).isInfinite();
        assertThat(row.contributions()).extracting(Contribution::cause).containsExactly(Cause.values());
    }

    // eight points in each half-power width of every resonance: platform, support, sensor, and poles of the filter
    @ParameterizedTest
    @ValueSource(doubles = {1700, 900})
    void the_grid_of_a_design_is_dense_around_every_resonance(double centre) {
        double width = centre == 1700 ? 1700 / 300.0 : 900 / 40.0;
        double[] f = DesignGrid.of(DESIGN, 10, 2000);
        assertThat(Arrays.stream(f).filter(x -> Math.abs(x - centre) <= width / 2).count()).isGreaterThanOrEqualTo(8);
        assertThat(f).contains(centre, 55, 555, 777, 20, 30);
        Assembly assembly = new Assembly(DESIGN.platform().orElseThrow());
        for (ModeProperties mode : ModeProperties.of(assembly)) {
            double half = mode.dampingRatio() * mode.frequencyHz();
            assertThat(Arrays.stream(f).filter(x -> Math.abs(x - mode.frequencyHz()) <= half).count()).as(mode.shape())
                .isGreaterThanOrEqualTo(8);
        }
        // z^2 - 1.9 z + 0.98 rings at acos(0.95/sqrt 0.98) of 30 kHz over 2 pi
        double pole = Math.acos(0.95 / Math.sqrt(0.98)) * 30e3 / (2 * Math.PI);
        assertThat(Arrays.stream(f).filter(x -> Math.abs(x / pole - 1) < 1e-9).count()).isEqualTo(1);
    }

    private static FrequencyIntegrals.Part part(double from, double to, double power) {
        return new FrequencyIntegrals.Part(2, from, to, (f, into, offset) -> {
            into[offset] = Math.pow(f, power);
            into[offset + 1] = 1;
        });
    }

    // integrals of powers in closed form; three Gauss nodes in 100 steps a decade leave (0.0115 p)^6/15750
    @Test
    void parts_with_ranges_of_their_own_are_integrated_in_one_pass() {
        GridSeeds seeds = new GridSeeds(DESIGN, new Assembly(DESIGN.platform().orElseThrow()));
        double[][] sums = FrequencyIntegrals.of(seeds, part(13, 700, -2), part(40, 3000, 1), part(9, 9, 1));
        assertThat(sums[0][0]).isCloseTo(1 / 13.0 - 1 / 700.0, within(1e-12));
        assertThat(sums[0][1]).isCloseTo(687, within(1e-8));
        assertThat(sums[1][0]).isCloseTo((3000.0 * 3000 - 1600) / 2, within(1e-5));
        assertThat(sums[1][1]).isCloseTo(2960, within(1e-8));
        assertThat(sums[2]).containsExactly(0, 0);
    }
}
