package quietband.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import quietband.model.Platform.Spring;
import quietband.model.Rotation;
import quietband.model.Vec;

/** The equations in time against the dynamic stiffness, and the solver against its residual. */
class RelativeMotionTest {

    private static final Vec NONE = Vec.all(Double.POSITIVE_INFINITY);

    private static Assembly mixed() {
        Spring a = new Spring("a", 1, new Vec(0.02, 0.02, -0.003), new Vec(9e3, 8e3, 2e4), new Vec(2, 3, 4), Vec.ZERO,
            Vec.all(0.8), new Vec(120, 300, 300), 0, new Rotation(new Vec(1, 2, 0), 0.4), false, 0);
        Spring b = new Spring("b", 1, new Vec(-0.02, 0.015, 0), Vec.all(1.2e4), Vec.all(1), Vec.ZERO, Vec.ZERO, NONE, 0,
            Rotation.NONE, false, 0);
        Spring c = new Spring("c", 1, new Vec(0.001, -0.02, 0.004), Vec.all(1.5e4), Vec.ZERO, Vec.ZERO, Vec.all(0.5),
            Vec.all(120), 0, Rotation.NONE, false, 0);
        return new Assembly(Platforms.with(List.of(a, b, c), new Vec(0.001, 0, 0.002), 0.02));
    }

    @Test
    void the_transfer_function_of_the_equations_in_time_is_the_frequency_response() {
        Assembly assembly = mixed();
        RelativeMotion time = new RelativeMotion(assembly);
        PlatformMotion frequency = new PlatformMotion(assembly);
        int n = time.order();
        assertThat(n).isEqualTo(24);
        for (double f : new double[] {11, 73, 140, 900}) {
            double w = 2 * Math.PI * f;
            frequency.at(f);
            // (j w I - F) x = G, solved as a complex system
            double[] re = new double[n * n];
            double[] im = new double[n * n];
            double[] bRe = new double[3 * n];
            double[] bIm = new double[3 * n];
            RealMatrix dynamics = time.dynamics();
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    re[n * i + j] = -dynamics.getEntry(i, j);
                }
                im[n * i + i] = w;
                for (int j = 0; j < 3; j++) {
                    bRe[3 * i + j] = time.drive(i, j);
                }
            }
            assertThat(ComplexSolver.solve(n, re, im, 3, bRe, bIm)).isTrue();
            for (int i = 0; i < 6; i++) {
                for (int j = 0; j < 3; j++) {
                    double size = Math.hypot(frequency.relativeRe(i, j), frequency.relativeIm(i, j)) + 1e-9;
                    // rounding of a 24 x 24 system with rates up to 1e4
                    assertThat(bRe[3 * i + j]).isCloseTo(frequency.relativeRe(i, j), within(1e-9 * size));
                    assertThat(bIm[3 * i + j]).isCloseTo(frequency.relativeIm(i, j), within(1e-9 * size));
                }
            }
        }
    }

    @Test
    void far_below_its_modes_the_platform_follows_and_far_above_it_stays() {
        PlatformMotion motion = new PlatformMotion(mixed());
        double[] re = new double[9];
        double[] im = new double[9];
        motion.at(0.01);
        motion.accelerationOf(new Vec(0.01, 0.02, 0.03), re, im);
        for (int e = 0; e < 9; e++) {
            // (0.01 Hz/70 Hz)^2 = 2e-8
            assertThat(re[e]).isCloseTo(e % 4 == 0 ? 1 : 0, within(1e-7));
        }
        motion.at(1e6);
        motion.accelerationOf(new Vec(0.001, 0, 0.002), re, im);
        for (int e = 0; e < 9; e++) {
            // dampers transmit 1/f: c w/(m w^2) = 6/(0.2 * 6e6)
            assertThat(Math.hypot(re[e], im[e])).isLessThan(2e-5);
        }
    }

    @Test
    void the_solver_leaves_no_residual_and_reports_a_singular_matrix() {
        java.util.Random random = new java.util.Random(3);
        int n = 5;
        double[] aRe = random.doubles((long) n * n).map(v -> v - 0.5).toArray();
        double[] aIm = random.doubles((long) n * n).map(v -> v - 0.5).toArray();
        aRe[0] = 0;
        aIm[0] = 0;
        double[] bRe = random.doubles(n).toArray();
        double[] bIm = random.doubles(n).toArray();
        double[] xRe = bRe.clone();
        double[] xIm = bIm.clone();
        assertThat(ComplexSolver.solve(n, aRe.clone(), aIm.clone(), 1, xRe, xIm)).isTrue();
        for (int i = 0; i < n; i++) {
            double re = -bRe[i];
            double im = -bIm[i];
            for (int j = 0; j < n; j++) {
                re += aRe[n * i + j] * xRe[j] - aIm[n * i + j] * xIm[j];
                im += aRe[n * i + j] * xIm[j] + aIm[n * i + j] * xRe[j];
            }
            assertThat(Math.hypot(re, im)).isLessThan(1e-13);
        }
        assertThat(ComplexSolver.solve(2, new double[] {1, 2, 2, 4}, new double[4], 1, new double[2], new double[2])).isFalse();
    }
}
