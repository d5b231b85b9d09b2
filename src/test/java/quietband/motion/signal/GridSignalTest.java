package quietband.motion.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Sinusoids on a grid, turning phases, the quadrature of a signal and averages under a triangle. */
class GridSignalTest {

    // the cubic of Hermite misses a cosine by theta^4/384 at most, half way
    @ParameterizedTest
    @ValueSource(doubles = {0.02, 0.2, 0.5})
    void between_points_a_sinusoid_is_the_cubic_through_values_and_slopes(double theta) {
        GridSinusoid cosine = GridSinusoid.cosine(2, theta).plus(GridSinusoid.cosine(3, theta)).times(0.2);
        for (double s : new double[] {0, 0.25, 0.5, 0.9, 1}) {
            double[] at = cosine.at(s, theta);
            double bound = 1.01 * Math.pow(theta, 4) / 384 + 1e-15;
            assertThat(at[0]).isCloseTo(Math.cos(theta * s), within(bound));
            assertThat(at[1]).isCloseTo(Math.sin(theta * s), within(bound));
        }
        // and no better than that, so that the bound means something
        assertThat(Math.abs(cosine.at(0.5, theta)[0] - Math.cos(theta / 2))).isGreaterThan(0.3 * Math.pow(theta, 4) / 384);
    }

    @Test
    void a_phase_that_turns_step_by_step_or_in_leaps_is_the_same() {
        PhaseRotation steps = new PhaseRotation(1.234);
        for (long k = 1; k < 3000; k++) {
            steps.to(k);
            // 256 products between fresh starts: some 256 roundings
            assertThat(steps.cos()).isCloseTo(Math.cos(1.234 * k), within(1e-12));
            assertThat(steps.sin()).isCloseTo(Math.sin(1.234 * k), within(1e-12));
        }
        PhaseRotation leaps = new PhaseRotation(0.25);
        for (long k : new long[] {7, 1_000_001, 3, 4, 5, 6}) {
            leaps.to(k);
            assertThat(leaps.sin()).isCloseTo(Math.sin(0.25 * k), within(1e-9));
        }
    }

    // cos(theta k) becomes -sin(theta k) at every angle above the lowest: 3e-7 over the share, here 1, is the promise
    @ParameterizedTest
    @ValueSource(doubles = {0.02, 0.5, 2.9})
    void the_quadrature_of_a_cosine_is_minus_its_sine_at_any_frequency(double theta) {
        QuadratureSignal quadrature = new QuadratureSignal(0.02, 1);
        SignalStream out = new SignalStream();
        int n = 20_000;
        for (int k = 0; k < n; k++) {
            quadrature.push(Math.cos(theta * k + 0.3), out);
        }
        quadrature.flush(out);
        assertThat(out.end()).isEqualTo(n - quadrature.reach());
        for (long k = quadrature.reach(); k < out.end(); k += 17) {
            assertThat(out.get(k)).isCloseTo(-Math.sin(theta * k + 0.3), within(2e-6));
        }
    }

    @Test
    void a_stream_keeps_absolute_numbers_whatever_it_has_forgotten() {
        SignalStream stream = new SignalStream();
        stream.startAt(-5);
        for (int k = -5; k < 4000; k++) {
            stream.push(k);
            stream.dropBefore(k - 100L);
        }
        double[] copy = new double[3];
        stream.copy(3950, 3, copy);
        assertThat(copy).containsExactly(3950, 3951, 3952);
        stream.add(3951, 0.5);
        assertThat(stream.get(3951)).isEqualTo(3951.5);
        assertThat(stream.end()).isEqualTo(4000);
        assertThat(stream.first()).isBetween(3000L, 3899L);
    }

    // second road: the midpoint rule with 20,000 steps, off by 1e-9 at most
    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-4, 9e-4, 1.1e-3, 0.3, 5})
    void a_triangle_takes_its_shares_of_a_decay(double lambda) {
        TriangleAverage average = new TriangleAverage(lambda);
        double[] sum = new double[4];
        int n = 20_000;
        for (int i = 0; i < n; i++) {
            double s = (i + 0.5) / n;
            sum[0] += s * Math.exp(-lambda * s) / n;
            sum[1] += (1 - s) * Math.exp(-lambda * s) / n;
            sum[2] += s * Math.exp(-2 * lambda * s) / n;
            sum[3] += (1 - s) * Math.exp(-2 * lambda * s) / n;
        }
        assertThat(average.rising1).isCloseTo(sum[0], within(1e-8));
        assertThat(average.falling1).isCloseTo(sum[1], within(1e-8));
        assertThat(average.rising2).isCloseTo(sum[2], within(1e-8));
        assertThat(average.falling2).isCloseTo(sum[3], within(1e-8));
        assertThat(new TriangleAverage(Double.POSITIVE_INFINITY).falling1).isZero();
    }

    // t^n under 1 - |t| from -1 to 1: 1, 0, 1/6, 0, for a constant, a line, a square and a cube
    @Test
    void a_cubic_is_averaged_exactly() {
        assertThat(TriangleAverage.of(2, 2, 2, 0, 0)).isCloseTo(2, within(1e-15));
        assertThat(TriangleAverage.of(-1, 0, 1, 1, 1)).isCloseTo(0, within(1e-15));
        assertThat(TriangleAverage.of(1, 0, 1, -2, 2)).isCloseTo(1 / 6.0, within(1e-15));
        assertThat(TriangleAverage.of(-1, 0, 1, 3, 3)).isCloseTo(0, within(1e-15));
    }
}
