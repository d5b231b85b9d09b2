package quietband.cancellation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.model.Cancellation;
import quietband.model.Cancellation.Pass;
import quietband.model.Vec;
import quietband.response.Models;
import quietband.spectrum.ComplexProduct;

/** Electronic noise of a correction and the figures of its path that warnings rest on, from their formulas. */
class CancellationNoiseTest {

    private static Cancellation correction(String more) {
        return Models.of(Models.oscillator("") + "cancellation: {" + more + "}\n").cancellation().orElseThrow();
    }

    private static final String FULL = "sensor: {place: housing, bandwidth: 3 kHz, resonance: {frequency: 9 kHz, q: 4}, "
        + "noise: {x: 40 ug/rtHz, y: 10 ug/rtHz, z: 25 ug/rtHz}, range: {x: 10 g, y: 20 g, z: 5 g}, cross_axis: 4 %}, "
        + "path: {sample_rate: 40 kHz, latency: 9 us, high_pass: {frequency: 20 Hz, order: 2}, low_pass: {frequency: 6 kHz, order: 3}, "
        + "taps: {x: [1.5, -0.5], y: [1], z: [0.9, 0, 0.1]}, converter_bits: 12}, "
        + "tuning: {slope: -4 ppb/V, noise: 50 nV/rtHz, bandwidth: 8 kHz}, error: {gain: {x: 3 %, y: -2 %}, phase: 3 deg, delay: 5 us}";

    // System:  S = sum w^2 (1 + gain)^2 |high low filter hold tuning|^2 n^2 + sum w^2 (1 + gain)^2 |filter hold tuning|^2 q^2/(6 fs)
    // Note:    neither the sensor's own response nor its cross axis, phase or delays count; rounding
    @ParameterizedTest
    @ValueSource(doubles = {12, 180, 2500, 15_000})
    void sensor_and_converter_add_in_power_with_what_they_pass_through(double f) {
        CancellationNoise noise = new CancellationNoise(correction(FULL), new Vec(0.5e-9, -1e-9, 0.8e-9));
        double a = 2 * Math.PI * f / 40e3;
        double hold = Math.pow(Math.sin(a / 2) / (a / 2), 2);
        double port = 1 / (1 + Math.pow(f / 8000, 2));
        double passes = 1 / (1 + Math.pow(20 / f, 4)) / (1 + Math.pow(f / 6000, 6));
        double[] filter = {1.5 * 1.5 + 0.25 - 1.5 * Math.cos(a), 1, 0.81 + 0.01 + 0.18 * Math.cos(2 * a)};
        double[] weight = {0.5e-9 * 1.03, 1e-9 * 0.98, 0.8e-9};
        double[] density = {40e-6, 10e-6, 25e-6};
        double[] range = {10, 20, 5};
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            double q = 2 * range[i] / 4096;
            double carried = weight[i] * weight[i] * filter[i] * hold * port;
            sum += carried * (passes * density[i] * density[i] + q * q / (6 * 40e3));
        }
        assertThat(noise.sensor(f)).isCloseTo(sum, within(1e-12 * sum));
        double voltage = Math.pow(4e-9 * 50e-9, 2) * port;
        assertThat(noise.tuning(f)).isCloseTo(voltage, within(1e-12 * voltage));
    }

    // Result:  the same, on arrays, on top of what is there; the second frequency has half the power of everything
    @Test
    void sources_add_up_on_arrays_as_one_by_one() {
        Cancellation c = correction(FULL);
        Vec weights = new Vec(0.5e-9, -1e-9, 0.8e-9);
        CancellationPath path = new CancellationPath(c);
        double[][] after = new double[3][2];
        double[][] digital = new double[3][2];
        for (int i = 0; i < 3; i++) {
            after[i] = new double[] {path.afterSensorPower(i, 180), path.afterSensorPower(i, 180) / 2};
            digital[i] = new double[] {path.digitalPower(i, 180), path.digitalPower(i, 180) / 2};
        }
        CancellationNoise noise = new CancellationNoise(c, weights);
        double all = noise.sensor(180) + noise.tuning(180);
        double[] density = {2 * all, 0, 7};
        new NoiseSources(c, weights).addTo(density, after, digital, new double[] {path.tuningPower(180), path.tuningPower(180) / 2}, 2);
        assertThat(density[0]).isCloseTo(3 * all, within(1e-12 * all));
        assertThat(density[1]).isCloseTo(all / 2, within(1e-12 * all));
        assertThat(density[2]).isEqualTo(7);
    }

    @Test
    void the_longest_delay_counts_latency_error_hold_and_taps() {
        // 9 + 5 us, and two samples of the z filter with one of the hold: 75 us
        assertThat(new CancellationPath(correction(FULL)).windingDelay()).isCloseTo(89e-6, within(1e-12));
        assertThat(new CancellationPath(correction("sensor: {place: housing}, error: {delay: {y: -7 us}}")).windingDelay())
            .isCloseTo(7e-6, within(1e-15));
    }

    // fs - top = 38 kHz: pole 1/(1 + (38/3)^2), resonance and the third-order low pass
    @Test
    void what_folds_into_the_band_is_passed_by_sensor_and_low_pass_alone() {
        double r = 38.0 / 9;
        double expected = 1 / Math.sqrt((1 + Math.pow(38 / 3.0, 2)) * (Math.pow(1 - r * r, 2) + r * r / 16) * (1 + Math.pow(38 / 6.0, 6)));
        assertThat(new CancellationPath(correction(FULL)).foldedGain(1, 2000)).isCloseTo(expected, within(1e-12));
    }

    @Test
    void elements_multiply_to_the_path_and_can_be_left_out_one_by_one() {
        CancellationPath path = new CancellationPath(correction(FULL));
        double[] re = new double[3];
        double[] im = new double[3];
        for (double f : new double[] {15, 700, 9000}) {
            path.write(f, new CancellationPath.Elements(false, true, true, true), re, im);
            for (int i = 0; i < 3; i++) {
                Complex errors = new Complex(re[i], im[i]);
                double angle = Math.toRadians(3) - 2 * Math.PI * f * 5e-6;
                double gain = new double[] {1.03, 0.98, 1}[i];
                assertThat(errors.subtract(new Complex(gain * Math.cos(angle), gain * Math.sin(angle))).norm()).isLessThan(1e-14);
                assertThat(path.at(i, f).subtract(path.nominal(i, f).multiply(errors)).norm()).isLessThan(1e-14);
                assertThat(path.nominal(i, f).subtract(path.sensor(i, f).multiply(path.afterSensor(i, f))).norm()).isLessThan(1e-14);
            }
        }
    }

    // order by order: |H|^2 = 1/(1 + r^2n) and the phase lag at the corner of n times 45 degrees, which a high pass has as a lead
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void a_butterworth_pass_has_its_magnitude_and_its_phase_at_the_corner(int order) {
        Pass pass = new Pass(730, order);
        for (double r : new double[] {0.1, 0.9, 1, 1.7, 12}) {
            double low = Math.pow(AnalogElements.lowPass(730 * r, pass).norm(), 2);
            assertThat(low).isCloseTo(1 / (1 + Math.pow(r, 2 * order)), within(1e-12));
            double high = Math.pow(AnalogElements.highPass(730 * r, pass).norm(), 2);
            assertThat(high).isCloseTo(1 - low, within(1e-12));
        }
        Complex lag = new Complex(Math.cos(Math.PI / 4 * order), -Math.sin(Math.PI / 4 * order)).multiply(Math.sqrt(0.5));
        assertThat(AnalogElements.lowPass(730, pass).subtract(lag).norm()).isLessThan(1e-12);
        assertThat(AnalogElements.highPass(730, pass).subtract(lag.conjugate()).norm()).isLessThan(1e-12);
    }

    @Test
    void a_product_of_elements_is_that_of_complex_numbers() {
        Random random = new Random(5);
        ComplexProduct p = new ComplexProduct();
        Complex q = Complex.ONE;
        for (int k = 0; k < 30; k++) {
            Complex next = new Complex(random.nextGaussian(), random.nextGaussian());
            p.times(next.getReal(), next.getImaginary()).turn(0.3 * k);
            q = q.multiply(next).multiply(new Complex(Math.cos(0.3 * k), Math.sin(0.3 * k)));
            Complex under = new Complex(random.nextGaussian(), 1);
            p.over(under.getReal(), under.getImaginary());
            q = q.divide(under);
        }
        assertThat(p.value().subtract(q).norm()).isLessThan(1e-13 * q.norm());
        // a corner at infinity divides by one; an infinite divisor leaves nothing
        assertThat(new ComplexProduct().pole(5 / Double.POSITIVE_INFINITY).value()).isEqualTo(Complex.ONE);
        assertThat(p.over(1, Double.POSITIVE_INFINITY).value()).isEqualTo(Complex.ZERO);
    }
}
