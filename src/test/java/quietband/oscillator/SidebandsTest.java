package quietband.oscillator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Oscillator.Resonator;
import quietband.model.Resonance;
import quietband.model.Rotation;
import quietband.model.Vec;

class SidebandsTest {

    // System:  oscillator of 10 MHz, sensitivity 1e-9/g, sinusoidal vibration of 1 g peak
    // Input:   10 Hz
    // Result:  peak phase excursion 1e-3 rad; 1 rad when multiplied to 10 GHz
    // Ref:     J. R. Vig, Quartz crystal resonators and oscillators, a tutorial, rev. 8.5.2, slide 189 (read)
    @Test
    void peak_phase_excursion_is_the_tutorials() {
        assertThat(Sidebands.index(1e-9, 1, 10e6, 10)).isCloseTo(1e-3, within(1e-15));
        assertThat(Sidebands.index(1e-9, 1, 10e9, 10)).isCloseTo(1, within(1e-12));
    }

    // Result:  -46.02 ... -126.02 dBc at 1 Hz ... 10 kHz
    // Ref:     formula R. L. Filler, IEEE Trans. UFFC 35(3) 297-305 (1988); table from memory, values derived
    // Note:    half a unit of the second decimal; rms taken for peak would be 3.01 dB off
    @ParameterizedTest
    @CsvSource({"1, -46.02", "10, -66.02", "100, -86.02", "1e3, -106.02", "1e4, -126.02"})
    void sine_sidebands_fall_20_db_a_decade(double f, double dbc) {
        assertThat(Sidebands.levelDbc(Sidebands.index(1e-9, 1, 10e6, f))).isCloseTo(dbc, within(0.005));
    }

    // System:  the same under random vibration of 0.1 g^2/Hz
    // Result:  -53.01 ... -133.01 dBc/Hz at 1 Hz ... 10 kHz
    // Ref:     inputs Vig, slide 337 (read), values derived
    @ParameterizedTest
    @CsvSource({"1, -53.01", "10, -73.01", "100, -93.01", "1e3, -113.01", "1e4, -133.01"})
    void random_vibration_gives_the_published_phase_noise(double f, double dbc) {
        double density = 1e-18 * 0.1;
        assertThat(10 * Math.log10(Sidebands.phaseNoise(density, 10e6, f))).isCloseTo(dbc, within(0.005));
        assertThat(Sidebands.frequencyDensity(Sidebands.phaseNoise(density, 10e6, f), 10e6, f))
            .isCloseTo(density, within(1e-15 * density));
    }

    // System:  phase noise of -100 dBc/Hz over 500 Hz on each side: S_phi = 2e-10 rad^2/Hz, 1e-7 rad^2
    // Result:  316.2 urad rms (by hand)
    @Test
    void jitter_counts_both_sidebands() {
        assertThat(Sidebands.jitterRad(1e-10 * 500)).isCloseTo(3.16227766e-4, within(1e-12));
    }

    // Result:  exact sideband J1/J0 at index 0.1, 0.5, 1: -26.01, -11.76, -4.81 dBc; small-angle -26.02, -12.04, -6.02 (derived)
    @ParameterizedTest
    @CsvSource({"0.1, -26.01, -26.02", "0.5, -11.76, -12.04", "1, -4.81, -6.02"})
    void large_indices_use_the_bessel_ratio(double index, double exact, double small) {
        assertThat(Sidebands.exactLevelDbc(index)).isCloseTo(exact, within(0.005));
        assertThat(20 * Math.log10(index / 2)).isCloseTo(small, within(0.005));
        // at 0.1 the small-angle form still stands, above it the exact one
        assertThat(Sidebands.levelDbc(index)).isCloseTo(index > 0.1 ? exact : small, within(0.005));
    }

    @Test
    void bessel_ratio_is_that_of_a_frequency_modulated_wave() {
        // second road: Fourier coefficients of exp(j beta sin t) by the trapezoid rule, exact for a periodic function
        double beta = 1.7;
        int n = 64;
        double[] c = new double[2];
        for (int k = 0; k < n; k++) {
            double t = 2 * Math.PI * k / n;
            for (int order = 0; order < 2; order++) {
                c[order] += Math.cos(beta * Math.sin(t) - order * t) / n;
            }
        }
        assertThat(Sidebands.exactLevelDbc(beta)).isCloseTo(20 * Math.log10(c[1] / c[0]), within(1e-10));
    }

    // Result:  vector of 3e-10, 4e-10, 12e-10 is 13e-10 exactly (derived)
    @Test
    void the_vector_of_3_4_12_is_13_and_turning_keeps_it() {
        Vec g = new Vec(3e-10, 4e-10, 12e-10);
        assertThat(g.length()).isCloseTo(13e-10, within(1e-24));
        Resonator r = new Resonator("", "", g, Vec.ZERO, Resonance.NONE, new Rotation(new Vec(1, 2, 3), 0.7));
        assertThat(r.mountedSensitivityPerG().length()).isCloseTo(13e-10, within(1e-23));
    }

    @Test
    void a_support_resonance_is_a_base_excited_blank() {
        Resonance support = new Resonance(new Vec(1000, Double.POSITIVE_INFINITY, 500), new Vec(20, 1, 5));
        Sensitivity s = new Sensitivity(new Resonator("", "", new Vec(1e-9, 2e-9, -3e-9), Vec.ZERO, support, Rotation.NONE));
        double[] re = new double[3];
        double[] im = new double[3];
        s.at(1000, re, im);
        // at resonance |H| = sqrt(1 + Q^2), as for a spring with damping ratio 1/(2Q)
        assertThat(Math.hypot(re[0], im[0])).isCloseTo(1e-9 * Math.sqrt(401), within(1e-20));
        assertThat(re[1]).isEqualTo(2e-9);
        assertThat(im[1]).isZero();
        // r = 2: |H|^2 = (1 + (r/Q)^2)/((1 - r^2)^2 + (r/Q)^2); above resonance the motion is inverted: the sign flips
        assertThat(Math.hypot(re[2], im[2])).isCloseTo(3e-9 * Math.sqrt(1.16 / 9.16), within(1e-20));
        assertThat(re[2]).isPositive();
        s.at(200, re, im);
        // below it the response lags: negative phase times a positive sensitivity
        assertThat(im[0]).isNegative();
    }
}
