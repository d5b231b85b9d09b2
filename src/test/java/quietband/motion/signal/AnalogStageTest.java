package quietband.motion.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.complex.Complex;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Steps that follow analog elements exactly, against their responses over frequency and their closed forms in time. */
class AnalogStageTest {

    private static final double STEP = 1e-5;

    // H(j w) of each element; the cubic through values and slopes is off by theta^4/720 of a sine on average, theta = 0.063 at 1 kHz
    @ParameterizedTest
    @CsvSource({"40", "333", "1000"})
    void the_periodic_state_of_an_element_is_its_response(double f) {
        double theta = 2 * Math.PI * f * STEP;
        GridSinusoid in = new GridSinusoid(0.8, -0.6, theta * 0.6, theta * 0.8);
        Complex p = new Complex(0, f / 250);
        check(AnalogStage.first(250, false, STEP), in, theta, Complex.ONE.divide(p.add(1)));
        check(AnalogStage.first(250, true, STEP), in, theta, p.divide(p.add(1)));
        Complex below = p.square().add(p.multiply(0.3)).add(1);
        check(AnalogStage.second(250, 0.3, 1, 0, 0, STEP), in, theta, below.reciprocal());
        check(AnalogStage.second(250, 0.3, 1, 0.3, 0, STEP), in, theta, p.multiply(0.3).add(1).divide(below));
        check(AnalogStage.second(250, 0.3, 0, 0, 1, STEP), in, theta, p.square().divide(below));
    }

    private static void check(AnalogStage stage, GridSinusoid in, double theta, Complex response) {
        GridSinusoid out = stage.settle(in, theta);
        Complex expected = new Complex(in.re(), in.im()).multiply(response);
        double size = expected.norm() + 1e-3;
        assertThat(new Complex(out.re(), out.im()).subtract(expected).norm()).isLessThan(1e-6 * size);
        // the slope per step is j theta times the value
        assertThat(new Complex(out.slopeRe(), out.slopeIm()).subtract(expected.multiply(new Complex(0, theta))).norm())
            .isLessThan(1e-5 * theta * size);
        // and stepping goes on as it was settled, but for rounding
        BlockSignal signal = new BlockSignal();
        for (int k = 0; k <= 50; k++) {
            signal.value[k] = in.re() * Math.cos(theta * k) - in.im() * Math.sin(theta * k);
            signal.slope[k] = in.slopeRe() * Math.cos(theta * k) - in.slopeIm() * Math.sin(theta * k);
        }
        stage.run(signal, signal, 50);
        for (int k = 0; k <= 50; k++) {
            assertThat(signal.value[k]).isCloseTo(out.re() * Math.cos(theta * k) - out.im() * Math.sin(theta * k), within(1e-12 * size));
        }
    }

    // a step: 1 - exp(-w t); a resonance 1 - exp(-a t) (cos b t + a/b sin b t): exact at the grid's points, 1e-13 is rounding
    @Test
    void a_step_is_answered_by_the_closed_forms() {
        BlockSignal one = new BlockSignal();
        java.util.Arrays.fill(one.value, 1);
        BlockSignal pole = new BlockSignal();
        AnalogStage.first(800, false, STEP).run(one, pole, 100);
        BlockSignal ring = new BlockSignal();
        AnalogStage.second(800, 0.1, 1, 0, 0, STEP).run(one, ring, 100);
        double w = 2 * Math.PI * 800;
        double a = 0.05 * w;
        double b = w * Math.sqrt(1 - 0.05 * 0.05);
        for (int k = 0; k <= 100; k++) {
            double t = k * STEP;
            assertThat(pole.value[k]).isCloseTo(1 - Math.exp(-w * t), within(1e-13));
            assertThat(pole.slope[k]).isCloseTo(w * STEP * Math.exp(-w * t), within(1e-13));
            assertThat(ring.value[k]).isCloseTo(1 - Math.exp(-a * t) * (Math.cos(b * t) + a / b * Math.sin(b * t)), within(1e-13));
        }
    }

    // x' = -a x + t^3 has the particular solution t^3/a - 3 t^2/a^2 + 6 t/a^3 - 6/a^4; a cubic is followed exactly
    @Test
    void a_cubic_input_is_integrated_exactly() {
        double a = 30;
        double h = 0.02;
        HermiteHold hold = HermiteHold.of(new double[][] {{-a}}, new double[][] {{1}}, h);
        double x = 0.7;
        for (int k = 0; k < 20; k++) {
            double t = k * h;
            double end = t + h;
            x = hold.phi()[0][0] * x + hold.input()[0][0] * t * t * t + hold.input()[0][1] * h * 3 * t * t
                + hold.input()[0][2] * end * end * end + hold.input()[0][3] * h * 3 * end * end;
            double exact = particular(end, a) + (0.7 - particular(0, a)) * Math.exp(-a * end);
            assertThat(x).isCloseTo(exact, within(1e-14));
        }
    }

    private static double particular(double t, double a) {
        return t * t * t / a - 3 * t * t / (a * a) + 6 * t / (a * a * a) - 6 / (a * a * a * a);
    }

    @Test
    void a_system_falls_apart_into_single_and_paired_states_with_the_same_dynamics() {
        Random random = new Random(12);
        for (int n : new int[] {3, 5, 8}) {
            double[][] f = new double[n][n];
            for (double[] row : f) {
                java.util.Arrays.setAll(row, i -> random.nextGaussian());
            }
            BlockDiagonal split = BlockDiagonal.of(f).orElseThrow();
            RealMatrix d = MatrixUtils.createRealMatrix(split.fromStates()).multiply(MatrixUtils.createRealMatrix(f))
                .multiply(MatrixUtils.createRealMatrix(split.toStates()));
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    boolean inside = i == j || (j == i + 1 && split.paired()[i]) || (i == j + 1 && split.paired()[j]);
                    if (!inside) {
                        assertThat(d.getEntry(i, j)).isCloseTo(0, within(1e-11));
                    }
                }
            }
            RealMatrix back = MatrixUtils.createRealMatrix(split.toStates()).multiply(d)
                .multiply(MatrixUtils.createRealMatrix(split.fromStates()));
            assertThat(back.subtract(MatrixUtils.createRealMatrix(f)).getFrobeniusNorm()).isLessThan(1e-11);
        }
        // a chain of integrators has one eigenvector only and is left whole
        assertThat(BlockDiagonal.of(new double[][] {{0, 1, 0}, {0, 0, 1}, {0, 0, 0}})).isEmpty();
    }

    @Test
    void a_recurrence_settles_where_its_periodic_state_is_and_one_that_rings_has_none() {
        double[][] a = {{0.5, 0.3}, {-0.4, 0.6}};
        double theta = 0.7;
        double[] re = {1, 2};
        double[] im = {0.5, 0};
        SteadyState.solve(a, theta, re, im);
        double[] x = {0, 0};
        for (int k = 0; k < 400; k++) {
            double c = Math.cos(theta * k);
            double s = Math.sin(theta * k);
            x = new double[] {0.5 * x[0] + 0.3 * x[1] + c - 0.5 * s, -0.4 * x[0] + 0.6 * x[1] + 2 * c};
        }
        // 400 steps of a radius of 0.65 leave nothing of the start
        assertThat(x[0]).isCloseTo(re[0] * Math.cos(400 * theta) - im[0] * Math.sin(400 * theta), within(1e-12));
        assertThat(x[1]).isCloseTo(re[1] * Math.cos(400 * theta) - im[1] * Math.sin(400 * theta), within(1e-12));
        assertThatThrownBy(() -> SteadyState.solve(new double[][] {{1}}, 0, new double[] {1}, new double[] {0}))
            .isInstanceOf(NoSteadyStateException.class).hasMessageContaining("add damping or move the frequency");
    }
}
