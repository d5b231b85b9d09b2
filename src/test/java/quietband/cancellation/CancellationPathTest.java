package quietband.cancellation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.stream.IntStream;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Cancellation;
import quietband.model.Cancellation.Pass;
import quietband.model.DigitalFilter;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;

class CancellationPathTest {

    private static Cancellation correction(String block) {
        return ModelFile.parse(Path.of("test.yaml"), """
            quietband: 1
            oscillator: {carrier: 10 MHz, resonator: {sensitivity: {x: 1 ppb/g}}}
            cancellation:
            """ + block.indent(2)).design().cancellation().orElseThrow();
    }

    private static double residualDb(String block, double f) {
        return 20 * Math.log10(new CancellationPath(correction(block)).at(0, f).subtract(1).norm());
    }

    // System:  feed-forward with a gain and a phase error, residual |1 - (1 + e) exp(-j phi)|
    // Result:  dB, derived
    // Note:    half a unit of the second decimal
    @ParameterizedTest
    @CsvSource({"0, 0.5, -41.18", "0, 1, -35.16", "0, 2, -29.14", "0, 5, -21.19", "0, 10, -15.17",
        "1, 0.5, -37.52", "1, 1, -33.90", "1, 2, -28.76", "1, 5, -21.09", "1, 10, -15.12",
        "5, 0.5, -25.88", "5, 1, -25.50", "5, 2, -24.23", "5, 5, -19.79", "5, 10, -14.63"})
    void gain_and_phase_errors_leave_the_known_residual(double gain, double phase, double db) {
        for (int sign : new int[] {1, -1}) {
            String block = "sensor: {place: platform}\nerror: {gain: " + gain + " %, phase: " + sign * phase + " deg}\n";
            assertThat(residualDb(block, 123)).isCloseTo(db, within(0.005));
        }
    }

    // System:  delay alone, 2 sin(pi f tau)
    // Result:  derived; 100 us at 2 kHz makes it worse by 1.40 dB (1.40497)
    @ParameterizedTest
    @CsvSource({"10, 100, -44.04", "10, 1000, -24.04", "10, 2000, -18.02", "100, 2000, 1.40497", "7.96, 2000, -20.0",
        "0.796, 2000, -40.0"})
    void delay_leaves_twice_the_sine_of_half_its_phase(double us, double f, double db) {
        String latency = "sensor: {place: platform}\npath: {latency: " + us + " us}\n";
        String error = "sensor: {place: platform}\nerror: {delay: " + us + " us}\n";
        assertThat(residualDb(latency, f)).isCloseTo(db, within(0.006));
        assertThat(residualDb(error, f)).isCloseTo(db, within(0.006));
    }

    @Test
    void a_delay_does_no_good_above_one_over_six_times_itself() {
        assertThat(residualDb("sensor: {place: platform}\nerror: {delay: 100 us}\n", 1 / (6 * 100e-6))).isCloseTo(0, within(1e-9));
    }

    // Result:  one-pole lag at 10 kHz: -40.00, -20.04, -14.15 dB at 100, 1000, 2000 Hz (derived)
    @ParameterizedTest
    @CsvSource({"100, -40.00", "1000, -20.04", "2000, -14.15"})
    void a_pole_lags_as_known_in_sensor_low_pass_and_port(double f, double db) {
        assertThat(residualDb("sensor: {bandwidth: 10 kHz}\n", f)).isCloseTo(db, within(0.005));
        assertThat(residualDb("sensor: {place: platform}\npath: {low_pass: {frequency: 10 kHz}}\n", f)).isCloseTo(db, within(0.005));
        assertThat(residualDb("sensor: {place: platform}\ntuning: {slope: 1 ppm/V, bandwidth: 10 kHz}\n", f)).isCloseTo(db, within(0.005));
    }

    // Result:  zero-order hold alone at 2 kHz, 48 and 96 kHz rate: -17.68, -23.69 dB (derived)
    @ParameterizedTest
    @CsvSource({"48, -17.68", "96, -23.69"})
    void a_hold_costs_half_a_sample(double rate, double db) {
        assertThat(residualDb("sensor: {place: platform}\npath: {sample_rate: " + rate + " kHz}\n", 2000)).isCloseTo(db, within(0.005));
    }

    // Result:  hold: delay T/2, magnitude at f/fs = .25, .1, .05: -0.9121, -0.14335, -0.03575 dB (derived)
    @ParameterizedTest
    @CsvSource({"0.25, -0.9121", "0.1, -0.14335", "0.05, -0.03575"})
    void a_hold_droops_and_delays_as_known(double ratio, double db) {
        Complex h = AnalogElements.hold(ratio * 1000, 1000);
        assertThat(20 * Math.log10(h.norm())).isCloseTo(db, within(5e-5));
        assertThat(h.getArgument()).isCloseTo(-Math.PI * ratio, within(1e-12));
        // first-order hold, sinc^2, at 0.1: -0.287 dB
        assertThat(40 * Math.log10(AnalogElements.hold(100, 1000).norm())).isCloseTo(-0.287, within(5e-4));
    }

    @ParameterizedTest
    @CsvSource({"1", "2", "3", "4", "7"})
    void butterworth_passes_are_maximally_flat_with_half_the_power_at_their_corner(int order) {
        // |H|^2 = 1/(1 + r^(2n)), S. Butterworth, Experimental Wireless 7 (1930) 536 (from memory)
        for (double r : new double[] {0.1, 0.7, 1, 1.3, 9}) {
            Pass pass = new Pass(300, order);
            double low = 1 / Math.sqrt(1 + Math.pow(r, 2 * order));
            double high = 1 / Math.sqrt(1 + Math.pow(r, -2 * order));
            assertThat(AnalogElements.lowPass(300 * r, pass).norm()).isCloseTo(low, within(1e-12));
            assertThat(AnalogElements.highPass(300 * r, pass).norm()).isCloseTo(high, within(1e-12));
        }
        // causal: a low pass lags, by the sum of its poles' delays at low frequency; a high pass leads
        double sum = IntStream.range(0, order).mapToDouble(k -> Math.sin(Math.PI * (2 * k + 1) / (2.0 * order))).sum();
        assertThat(AnalogElements.lowPass(0.3, new Pass(300, order)).getArgument()).isCloseTo(-1e-3 * sum, within(1e-6));
        assertThat(AnalogElements.highPass(300e3, new Pass(300, order)).getArgument()).isCloseTo(1e-3 * sum, within(1e-6));
    }

    // System:  bilinear transform, prewarped, corner 0.1 fs
    // Result:  first order b = .24523728 .24523728, a1 = -.50952545; second-order Butterworth b = .06745527 .13491055
    //          .06745527, a = 1 -1.1429805 .4128016
    // Ref:     SciPy's butter (read on the page of check values)
    // Note:    at f the digital filter is the analog one at tan(pi f/fs)/tan(0.1 pi) of its corner; eight digits of the
    //          coefficients leave 1e-7
    @Test
    void sections_follow_the_bilinear_transform_of_the_analog_filter() {
        DigitalFilter one = new DigitalFilter(new int[0], new double[0],
            new double[][] {{.24523728, .24523728, 0, -.50952545, 0}});
        DigitalFilter two = new DigitalFilter(new int[0], new double[0],
            new double[][] {{.06745527, .13491055, .06745527, -1.1429805, .4128016}});
        for (double f : new double[] {10, 50, 100, 230, 400}) {
            double warped = Math.tan(Math.PI * f / 1000) / Math.tan(0.1 * Math.PI);
            Complex d1 = new FilterResponse(one, 1000).at(f).subtract(AnalogElements.lowPass(warped, new Pass(1, 1)));
            Complex d2 = new FilterResponse(two, 1000).at(f).subtract(AnalogElements.lowPass(warped, new Pass(1, 2)));
            assertThat(d1.norm()).isLessThan(2e-7);
            assertThat(d2.norm()).isLessThan(2e-7);
        }
    }

    @Test
    void taps_are_delays_and_sections_recursions() {
        // second road: run the difference equation on a sampled sine until it settles and compare amplitude and phase
        DigitalFilter filter = new DigitalFilter(new int[] {0, 3}, new double[] {1.2, -0.5},
            new double[][] {{0.3, 0.2, 0.1, -0.6, 0.25}, {1, 0.5, 0, 0.3, 0}});
        double w = 2 * Math.PI * 70 / 1000;
        int n = 4000;
        double re = 0;
        double im = 0;
        double[] x = IntStream.range(0, n).mapToDouble(k -> Math.cos(w * k)).toArray();
        double[] y = IntStream.range(0, n).mapToDouble(k -> 1.2 * x[k] - (k < 3 ? 0 : 0.5 * x[k - 3])).toArray();
        for (double[] s : filter.sections()) {
            double[] in = y.clone();
            for (int k = 0; k < n; k++) {
                y[k] = s[0] * in[k] + s[1] * at(in, k - 1) + s[2] * at(in, k - 2) - s[3] * at(y, k - 1) - s[4] * at(y, k - 2);
            }
        }
        for (int k = 1000; k < 4000; k++) {
            re += y[k] * Math.cos(w * k) * 2 / 3000;
            im -= y[k] * Math.sin(w * k) * 2 / 3000;
        }
        Complex h = new FilterResponse(filter, 1000).at(70);
        // 3000 samples are 210 whole periods; start-up has died out
        assertThat(re).isCloseTo(h.getReal(), within(1e-9));
        assertThat(im).isCloseTo(h.getImaginary(), within(1e-9));
    }

    private static double at(double[] a, int k) {
        return k < 0 ? 0 : a[k];
    }

    // Result:  45 us of total lag on 0.5 ppb/g crosses 0.05 ppb/g near 354 Hz; 10 us near 1592 Hz (derived)
    @ParameterizedTest
    @CsvSource({"45, 354", "10, 1592"})
    void lag_sets_how_far_up_a_correction_reaches(double us, double f) {
        CancellationPath p = new CancellationPath(correction("sensor: {place: platform}\npath: {latency: " + us + " us}\n"));
        assertThat(0.5 * p.at(0, f).subtract(1).norm()).isCloseTo(0.05, within(0.05 * 0.5 / f));
    }

    // Result:  16 bit over +-10 g: step 305.176 ug, 88.097 ug rms, .56866 ug/rtHz at 48 kHz (q^2/12 read, figures derived)
    @Test
    void a_converters_noise_spreads_evenly_up_to_half_the_rate() {
        Cancellation c = correction("sensor: {range: 10 g}\npath: {sample_rate: 48 kHz, converter_bits: 16}\n");
        double q = CancellationNoise.quantiserStepG(c, 0);
        assertThat(q).isCloseTo(305.176e-6, within(5e-10));
        assertThat(q / Math.sqrt(12)).isCloseTo(88.097e-6, within(5e-10));
        double density = new CancellationNoise(c, new Vec(1e-9, 0, 0)).sensor(1);
        // at 1 Hz the hold passes all
        assertThat(Math.sqrt(density) / 1e-9).isCloseTo(.56866e-6, within(5e-11));
    }

    // System:  a corrector's own floor 20 log10(G a_n f0/(sqrt2 f)): 1e-9/g, 25 ug/rtHz, 10 MHz
    // Result:  -155.1, -175.1, -201.1 dBc/Hz at 10, 100, 2000 Hz (derived)
    @ParameterizedTest
    @CsvSource({"10, -155.1", "100, -175.1", "2000, -201.1"})
    void the_sensors_noise_becomes_phase_noise(double f, double dbc) {
        Cancellation c = correction("sensor: {noise: {x: 25 ug/rtHz}}\n");
        double s = new CancellationNoise(c, new Vec(1e-9, 0, 0)).sensor(f);
        assertThat(10 * Math.log10(s * 1e14 / (2 * f * f))).isCloseTo(dbc, within(0.06));
    }

    @Test
    void noise_skips_the_sensors_own_dynamics_and_counts_the_gain_error() {
        Cancellation c = correction("sensor: {noise: 10 ug/rtHz, bandwidth: 100 Hz}\nerror: {gain: 10 %}\n"
            + "tuning: {slope: -2 ppm/V, noise: 3 nV/rtHz, bandwidth: 1 kHz}\n");
        CancellationNoise noise = new CancellationNoise(c, new Vec(1e-9, 2e-9, 2e-9));
        // 1.1^2 (1 + 4 + 4) 1e-18 1e-10 /(1 + 1) at the port's corner
        assertThat(noise.sensor(1000)).isCloseTo(1.21 * 9e-28 / 2, within(1e-39));
        assertThat(noise.tuning(1000)).isCloseTo(Math.pow(2e-6 * 3e-9, 2) / 2, within(1e-40));
    }

    @Test
    void a_constant_phase_is_the_same_at_all_frequencies_and_a_lead_is_positive() {
        CancellationPath p = new CancellationPath(correction("sensor: {place: platform}\nerror: {phase: 3 deg}\n"));
        for (double f : new double[] {10, 2000}) {
            assertThat(p.at(2, f).getArgument()).isCloseTo(Math.toRadians(3), within(1e-12));
        }
    }

    @Test
    void nothing_passes_above_half_the_sample_rate() {
        CancellationPath p = new CancellationPath(correction("sensor: {place: platform}\npath: {sample_rate: 3 kHz}\n"));
        assertThat(p.at(0, 1500).norm()).isGreaterThan(0.6);
        assertThat(p.at(0, 1500.1).norm()).isZero();
    }
}
