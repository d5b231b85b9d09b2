package quietband.spectrum;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.assertj.core.data.Offset;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** Averaged spectra and decimation against closed forms. */
class WelchTest {

    @Test
    void a_sine_s_density_integrates_to_half_its_peak_squared() {
        Welch w = new Welch(1, 1, 1024, 512);
        for (int i = 0; i < 8192; i++) {
            w.push(new double[] {3 * Math.sin(2 * Math.PI * 50.3 * i / 512)});
        }
        double sum = 0;
        for (int k = 0; k < w.bins(); k++) {
            sum += w.density(0, k) * w.resolutionHz();
        }
        assertThat(sum).isCloseTo(4.5, Percentage.withPercentage(0.1));
    }

    @Test
    void white_noise_has_a_one_sided_density_of_two_variances_over_the_rate() {
        SplittableRandom random = new SplittableRandom(1);
        Welch w = new Welch(2, 1, 256, 1000);
        for (int i = 0; i < 400_000; i++) {
            double v = random.nextDouble() - 0.5;
            w.push(new double[] {v, -2 * v + (random.nextDouble() - 0.5)});
        }
        double mean = 0;
        for (int k = 4; k < 124; k++) {
            mean += w.density(0, k) / 120;
        }
        assertThat(mean).isCloseTo(2 / 12.0 / 1000, Percentage.withPercentage(1));
        // 4 parts of 5 of the second channel's power come from the first
        assertThat(w.coherence(0, 1, 60)).isCloseTo(0.8, Offset.offset(0.02));
        assertThat(w.response(0, 1, 60)).isCloseTo(2, Percentage.withPercentage(2));
    }

    @Test
    void the_spread_of_a_density_is_that_of_its_degrees_of_freedom() {
        SplittableRandom random = new SplittableRandom(2);
        double mean = 0;
        double square = 0;
        double dof = 0;
        int runs = 400;
        for (int run = 0; run < runs; run++) {
            Welch w = new Welch(1, 1, 64, 64);
            for (int i = 0; i < 64 + 32 * 39; i++) {
                w.push(new double[] {random.nextGaussian()});
            }
            dof = w.degreesOfFreedom();
            mean += w.density(0, 16) / runs;
            square += w.density(0, 16) * w.density(0, 16) / runs;
        }
        // variance over mean squared is 2/dof; its own spread over 400 runs 7 %
        assertThat((square - mean * mean) / (mean * mean)).isCloseTo(2 / dof, Percentage.withPercentage(25));
    }

    @Test
    void decimation_keeps_the_pass_band_in_place_and_stops_what_would_fold() {
        double[] kept = new double[2];
        Decimator d = new Decimator(2, 10, 0.025, (number, v) -> {
            if (number > 20 && number < 80) {
                kept[0] = Math.max(kept[0], Math.abs(v[0] - Math.cos(2 * Math.PI * 0.02 * 10 * number)));
                kept[1] = Math.max(kept[1], Math.abs(v[1]));
            }
        });
        double[][] x = new double[2][1000];
        for (int i = 0; i < 1000; i++) {
            x[0][i] = Math.cos(2 * Math.PI * 0.02 * i);
            x[1][i] = Math.cos(2 * Math.PI * 0.08 * i);
        }
        d.push(x, 1000);
        d.finish();
        // 90 dB both ways
        assertThat(kept[0]).isLessThan(1e-4);
        assertThat(kept[1]).isLessThan(1e-4);
    }
}
