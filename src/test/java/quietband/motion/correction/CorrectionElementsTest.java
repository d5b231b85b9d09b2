package quietband.motion.correction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.DigitalFilter;
import quietband.motion.signal.BlockSignal;
import quietband.motion.signal.GridSinusoid;
import quietband.response.Models;

/** The correction's elements in time: filters, analog chains, the port, and what is sensed. */
class CorrectionElementsTest {

    private static final double STEP = 2e-6;

    private static Design design(String sensor, String more) {
        return Models.of(Models.oscillator("") + "cancellation: {sensor: {place: housing" + sensor + "}" + more + "}\n");
    }

    // an impulse gives the taps, then the section's recursion by hand
    @Test
    void a_filter_answers_an_impulse_with_its_taps_and_its_recursion() {
        DigitalFilterRun taps = new DigitalFilterRun(new DigitalFilter(new int[] {0, 2, 5}, new double[] {1.5, -0.5, 0.25},
            new double[0][]));
        double[] expected = {1.5, 0, -0.5, 0, 0, 0.25, 0, 0};
        for (int k = 0; k < expected.length; k++) {
            assertThat(taps.next(k == 0 ? 1 : 0)).isEqualTo(expected[k]);
        }
        DigitalFilterRun section = new DigitalFilterRun(new DigitalFilter(new int[0], new double[0],
            new double[][] {{0.5, 0.2, -0.1, -0.9, 0.4}}));
        double y1 = 0.5;
        double y2 = 0.2 + 0.9 * y1;
        double y3 = -0.1 + 0.9 * y2 - 0.4 * y1;
        double y4 = 0.9 * y3 - 0.4 * y2;
        for (double y : new double[] {y1, y2, y3, y4}) {
            assertThat(section.next(y == y1 ? 1 : 0)).isCloseTo(y, within(1e-15));
        }
    }

    // z = exp(j theta): (1.3 - 0.3 z^-4) (1 + 0.5 z^-1)/(1 - 0.6 z^-1 + 0.2 z^-2); then sample by sample as settled
    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.4, 2.5})
    void a_settled_filter_goes_on_as_its_response_says(double theta) {
        DigitalFilterRun run = new DigitalFilterRun(new DigitalFilter(new int[] {0, 4}, new double[] {1.3, -0.3},
            new double[][] {{1, 0.5, 0, -0.6, 0.2}}));
        Complex back = new Complex(Math.cos(theta), -Math.sin(theta));
        Complex h = back.pow(4).multiply(-0.3).add(1.3).multiply(back.multiply(0.5).add(1))
            .divide(back.square().multiply(0.2).subtract(back.multiply(0.6)).add(1));
        Complex in = new Complex(0.7, -1.1);
        double[] out = run.settle(in.getReal(), in.getImaginary(), theta);
        Complex expected = in.multiply(h);
        assertThat(out[0]).isCloseTo(expected.getReal(), within(1e-12));
        assertThat(out[1]).isCloseTo(expected.getImaginary(), within(1e-12));
        for (int k = 0; k < 40; k++) {
            Complex turn = new Complex(Math.cos(theta * k), Math.sin(theta * k));
            assertThat(run.next(in.multiply(turn).getReal())).isCloseTo(expected.multiply(turn).getReal(), within(1e-12));
        }
    }

    // |H|^2 of a Butterworth pass: 1/(1 + (f/fc)^2n), of a sensor 1/(1 + (f/fb)^2)/((1 - r^2)^2 + r^2/Q^2); theta = 0.025 at 2 kHz
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5})
    void a_chain_settles_at_the_magnitude_of_its_passes(int order) {
        Design d = design(", bandwidth: 5 kHz, resonance: {frequency: 8 kHz, q: 2}", ", path: {low_pass: {frequency: 1.5 kHz, order: "
            + order + "}, high_pass: {frequency: 300 Hz, order: " + order + "}}");
        for (double f : new double[] {100, 300, 1500, 2000}) {
            double theta = 2 * Math.PI * f * STEP;
            AnalogChain chain = AnalogChain.sensor(d.cancellation().orElseThrow(), 1, false, STEP);
            GridSinusoid out = chain.settle(GridSinusoid.cosine(1, theta), theta);
            double r = f / 8000;
            double power = 1 / (1 + Math.pow(f / 5000, 2)) / (Math.pow(1 - r * r, 2) + r * r / 4) / (1 + Math.pow(f / 1500, 2 * order))
                / (1 + Math.pow(300 / f, 2 * order));
            assertThat(Math.hypot(out.re(), out.im())).isCloseTo(Math.sqrt(power), within(1e-6));
        }
    }

    @Test
    void a_limiter_holds_the_range_and_counts_where_it_acts() {
        Cancellation c = design(", range: 0.5 g", "").cancellation().orElseThrow();
        AnalogChain chain = AnalogChain.sensor(c, 0, true, STEP);
        BlockSignal in = new BlockSignal();
        for (int k = 0; k <= 100; k++) {
            in.value[k] = Math.sin(2 * Math.PI * k / 100);
            in.slope[k] = 2 * Math.PI / 100 * Math.cos(2 * Math.PI * k / 100);
        }
        BlockSignal out = new BlockSignal();
        chain.run(in, out, 100);
        // sine above one half from 30 to 150 degrees and its mirror: points 9 to 41, 59 to 91
        assertThat(chain.clipped()).isEqualTo(66);
        for (int k = 0; k <= 100; k++) {
            assertThat(out.value[k]).isCloseTo(Math.max(-0.5, Math.min(0.5, in.value[k])), within(1e-15));
        }
        assertThat(AnalogChain.sensor(c, 0, false, STEP).clipped()).isZero();
    }

    // y = slope (v + curvature v^2/2), v = c/slope: with c = -1 ppb, slope -2 ppb/V and 0.1 /V: v = 0.5 V, y = -1.025 ppb
    @Test
    void the_port_bends_limits_and_follows_its_pole() {
        Cancellation c = design("", ", tuning: {slope: -2 ppb/V, range: 0.8 V, curvature: 10 %/V, bandwidth: 1 kHz}").cancellation()
            .orElseThrow();
        TuningPortRun port = new TuningPortRun(c, false);
        assertThat(port.bent(-1e-9)).isCloseTo(-1.025e-9, within(1e-21));
        assertThat(port.limited(5e-9)).isCloseTo(1.6e-9, within(1e-21));
        assertThat(port.limited(-5e-9)).isCloseTo(-1.6e-9, within(1e-21));
        assertThat(port.clipped()).isEqualTo(2);
        port.advance(3, port.decay(1e-4));
        port.advance(3, port.decay(2e-4));
        assertThat(port.state()).isCloseTo(3 * (1 - Math.exp(-2 * Math.PI * 0.3)), within(1e-14));
        TuningPortRun linear = new TuningPortRun(c, true);
        assertThat(linear.bent(-1e-9)).isEqualTo(-1e-9);
        assertThat(linear.limited(5e-9)).isEqualTo(5e-9);
    }

    @Test
    void axes_with_the_same_path_are_one_channel_when_nothing_bends() {
        Design alike = design(", cross_axis: {xy: 2 %}", ", error: {gain: {x: 10 %}}");
        List<SensorChannel> one = SensorChannel.of(alike, true);
        assertThat(one).hasSize(1);
        // 1.1 x 0.3 on x, of which 2 % is y; -0.4 on y; 1.2 on z, in ppb/g
        assertThat(one.get(0).row()[0]).isCloseTo(0.33e-9, within(1e-22));
        assertThat(one.get(0).row()[1]).isCloseTo(0.02 * 0.33e-9 - 0.4e-9, within(1e-22));
        assertThat(one.get(0).row()[2]).isCloseTo(1.2e-9, within(1e-22));
        assertThat(SensorChannel.of(alike, false)).hasSize(3);
        assertThat(SensorChannel.of(design("", ", error: {delay: {y: 1 us}}"), true)).hasSize(3);
        assertThat(SensorChannel.of(design("", ", weights: {z: 1 ppb/g}"), true)).extracting(SensorChannel::axis).containsExactly(2);
    }
}
