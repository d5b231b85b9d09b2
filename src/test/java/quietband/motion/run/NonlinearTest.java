package quietband.motion.run;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Offset;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.motion.drive.SineDrive;
import quietband.motion.signal.LossModel;
import quietband.motion.signal.TimeStepping;

/** Quantiser, clipping, curvature and folding against their closed forms. */
class NonlinearTest {

    private static Design design(String sensor, String path, String tuning) {
        return Examples.parse(Examples.oscillator("x"), "cancellation: {sensor: {place: housing" + sensor + "}, path: {" + path
            + "}, tuning: {" + tuning + "}}");
    }

    /** Bare less cancelled: what the port does, per grid point over a number of periods of a cosine. */
    private static double[] port(Design d, double f, double peakG, int perPeriod, int periods, boolean averaged) {
        double h = 1 / (f * perPeriod);
        SimulationPass e = new SimulationPass(d, new TimeStepping(h, false, LossModel.at(f), averaged, f / 2, 1_000_000, false));
        SineDrive drive = new SineDrive(Axis.X, 2 * Math.PI / perPeriod, peakG);
        e.settle(drive.phasors(), 2 * Math.PI / perPeriod);
        int skip = 2 * perPeriod;
        double[] y = new double[periods * perPeriod];
        e.run(drive, skip + y.length, frame -> {
            for (int k = 0; k < frame.n(); k++) {
                int at = (int) (frame.first() + k - skip);
                if (at >= 0) {
                    y[at] = frame.y()[0][k] - frame.y()[1][k];
                }
            }
            return true;
        });
        return y;
    }

    /** Amplitude of a harmonic over whole periods. */
    private static double harmonic(double[] y, int periods, int n) {
        double re = 0;
        double im = 0;
        for (int k = 0; k < y.length; k++) {
            double a = 2 * Math.PI * n * periods * k / y.length;
            re += y[k] * Math.cos(a);
            im += y[k] * Math.sin(a);
        }
        return 2 * Math.hypot(re, im) / y.length;
    }

    @Test
    void a_clipped_sine_has_the_harmonics_of_its_fourier_series() {
        // 10 g on a sensor of 5 g: clip at half the peak, a = asin(0.5); b1 = (2/pi)(a + sin a cos a) A,
        // b3 = (4/(3 pi)) sin a cos^3 a A (derived)
        double[] y = port(design(", range: 5 g", "", ""), 100, 10, 4096, 4, false);
        double a = Math.asin(0.5);
        assertThat(harmonic(y, 4, 1)).isCloseTo(10e-9 * 2 / Math.PI * (a + Math.sin(a) * Math.cos(a)), Percentage.withPercentage(0.01));
        assertThat(harmonic(y, 4, 3)).isCloseTo(10e-9 * 4 / (3 * Math.PI) * Math.sin(a) * Math.pow(Math.cos(a), 3),
            Percentage.withPercentage(0.05));
        assertThat(harmonic(y, 4, 2)).isLessThan(1e-14);
    }

    @Test
    void curvature_makes_a_second_harmonic_and_an_offset() {
        // y = slope (v + c v^2/2), v = 1 ppb/g * 4 g/(2 ppb/V) = 2 V: second harmonic and mean slope c V^2/4 (derived)
        double[] y = port(design("", "", "slope: 2 ppb/V, curvature: 3 %/V"), 100, 4, 256, 4, false);
        double expected = 2e-9 * 0.03 * 4 / 4;
        assertThat(harmonic(y, 4, 2)).isCloseTo(expected, Percentage.withPercentage(0.01));
        assertThat(harmonic(y, 4, 0) / 2).isCloseTo(expected, Percentage.withPercentage(0.01));
        assertThat(harmonic(y, 4, 1)).isCloseTo(4e-9, Percentage.withPercentage(0.01));
    }

    @Test
    void a_negative_slope_turns_the_curvature_s_sign() {
        double[] y = port(design("", "", "slope: -2 ppb/V, curvature: 3 %/V"), 100, 4, 256, 4, false);
        double mean = 0;
        for (double v : y) {
            mean += v / y.length;
        }
        assertThat(mean).isCloseTo(-2e-9 * 0.03 * 4 / 4, Percentage.withPercentage(0.01));
    }

    @Test
    void the_quantiser_s_noise_is_a_twelfth_of_its_step_squared() {
        // 8 bits over +-10 g: q = 78.125 mg; a sine of 7.3 g at no simple ratio to the sampling spreads the error evenly
        double[] y = port(design(", range: 10 g", "sample_rate: 100 kHz, converter_bits: 8", ""), 10007.0 / 13, 7.3, 1000, 60, false);
        double q = 20.0 / 256;
        double sum = 0;
        // the hold alone, from a converter without steps
        double[] fine = port(design(", range: 10 g", "sample_rate: 100 kHz", ""), 10007.0 / 13, 7.3, 1000, 60, false);
        for (int k = 0; k < y.length; k++) {
            sum += Math.pow((y[k] - fine[k]) * 1e9, 2) / y.length;
        }
        // some 8000 independent samples: 1.5 % of one standard deviation
        assertThat(sum).isCloseTo(q * q / 12, Percentage.withPercentage(5));
    }

    @Test
    void what_lies_above_half_the_sample_rate_folds_back() {
        // 9 kHz sampled at 10 kHz: a sequence of 1 kHz, held: 1 kHz with sinc(0.1), and 9 kHz with sinc(0.9)
        double[] y = port(design("", "sample_rate: 10 kHz", ""), 9000, 1, 360, 90, false);
        double folded = 1e-9 * Math.sin(0.1 * Math.PI) / (0.1 * Math.PI);
        // 90 periods of 9 kHz are ten of 1 kHz; the staircase is sampled 324 times a period of the hold
        assertThat(harmonic(y, 10, 1)).isCloseTo(folded, Percentage.withPercentage(1));
        assertThat(harmonic(y, 90, 1)).isCloseTo(1e-9 * Math.sin(0.9 * Math.PI) / (0.9 * Math.PI), Percentage.withPercentage(1));
    }

    @Test
    void the_port_stops_at_its_range() {
        double[] y = port(design("", "sample_rate: 50 kHz", "slope: 1 ppb/V, range: 2 V"), 100, 3, 1000, 2, false);
        double most = 0;
        for (double v : y) {
            most = Math.max(most, Math.abs(v));
        }
        assertThat(most).isCloseTo(2e-9, Offset.offset(1e-15));
    }

    @Test
    void averages_of_a_staircase_follow_its_fundamental_and_hold_its_images_back() {
        // 1 kHz at 20 kHz: hold sinc(0.05), average sinc^2(0.05); the image at 19 kHz would fold onto 1 kHz
        double[] y = port(design("", "sample_rate: 20 kHz", ""), 1000, 1, 20, 10, true);
        double s = Math.sin(0.05 * Math.PI) / (0.05 * Math.PI);
        // the crystal's signal is averaged alike where it is corrected, so bare less corrected is 1 - s^2 + s^3 exp(-j 0.05 pi)
        double turn = 0.05 * Math.PI;
        double expected = Math.hypot(1 - s * s + s * s * s * Math.cos(turn), s * s * s * Math.sin(turn));
        assertThat(harmonic(y, 10, 1)).isCloseTo(1e-9 * expected, Percentage.withPercentage(0.02));
    }

    @Test
    void a_dwell_tells_the_describing_function_of_a_clipped_sensor() {
        Design d = design(", range: 5 g", "sample_rate: 100 kHz", "");
        Dwell.Result r = Dwell.run(d, new Dwell.Request(Axis.X, 100, 10, 0.1, false));
        double a = Math.asin(0.5);
        double through = 2 / Math.PI * (a + Math.sin(a) * Math.cos(a));
        // the hold's half sample (1.8e-3 rad) is below the tolerance: |1 - N|
        assertThat(r.sensitivityPerG(Stack.CANCELLED)).isCloseTo((1 - through) * 1e-9, Percentage.withPercentage(0.1));
        assertThat(r.clipped()[0]).isPositive();
    }
}
