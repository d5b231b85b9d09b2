package quietband.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.complex.Complex;
import org.hipparchus.linear.EigenDecompositionNonSymmetric;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Platform;
import quietband.model.Platform.Spring;
import quietband.model.Rotation;
import quietband.model.Vec;
import quietband.platform.Platforms.Kind;

/** The damping ratio of a mode for each kind of damping, in closed form and from how fast the equations in time die out. */
class DampingRatioTest {

    private static final double W = 2 * Math.PI * 80;
    private static final double K = Platforms.MASS * W * W;

    /** Damping ratio of the mode at 80 Hz, along z. */
    private static double ratio(Platform platform) {
        Assembly assembly = new Assembly(platform);
        int mode = AxisFrequencies.mode(assembly.modes(), quietband.model.Axis.Z);
        return new DynamicStiffness(assembly).dampingRatio(mode);
    }

    // System:  N k in series with a damper: Im rho = N k w wc/(w^2 + wc^2), ratio Im D/(2 m w^2) = N/2 w wc/(w^2 + wc^2)
    // Result:  at its corner N/4; rounding
    @ParameterizedTest
    @CsvSource({"0.5, 80", "1.5, 20", "0.8, 900"})
    void a_relaxing_branch_damps_most_at_its_corner(double n, double corner) {
        double wc = 2 * Math.PI * corner;
        double expected = n / 2 * W * wc / (W * W + wc * wc);
        assertThat(ratio(Platforms.four(new Kind(K, 0, 0, n, corner, 0)))).isCloseTo(expected, within(1e-12));
        if (corner == 80) {
            assertThat(expected).isCloseTo(n / 4, within(1e-15));
        }
    }

    // System:  four lines of a quarter each, k* b cot b with b = w sqrt(m_s/k*): k*(1 - b^2/3 - b^4/45 - 2 b^6/945 ...)
    @ParameterizedTest
    @CsvSource({"0.1, 0.002", "0.25, 0.01"})
    void a_spring_with_mass_damps_as_its_own_complex_stiffness(double eta, double springMass) {
        Complex k = new Complex(K / 4, K / 4 * eta);
        Complex b2 = k.reciprocal().multiply(springMass / 4).multiply(W * W);
        Complex series = b2.pow(4).divide(-4725).add(b2.pow(3).multiply(-2.0 / 945)).add(b2.square().divide(-45)).add(b2.divide(-3)).add(1);
        double expected = 4 * k.multiply(series).getImaginary() / (2 * Platforms.MASS * W * W);
        // the next term, 2 b^10/93555, is below 1e-12 of it for b^2 = 0.2
        assertThat(ratio(Platforms.four(new Kind(K, 0, eta, 0, Double.POSITIVE_INFINITY, springMass))))
            .isCloseTo(expected, within(1e-7 * expected));
    }

    @Test
    void every_kind_of_damping_adds_and_modal_damping_adds_itself() {
        double c = 2 * 0.03 * Platforms.MASS * W;
        Platform all = Platforms.four(new Kind(K, c, 0.1, 0.5, 80, 0));
        Platform modal = new Platform(all.mass(), all.size(), all.inertia(), all.centreOfGravity(), all.springs(), 0.07, all.clearance(),
            all.stops(), all.massLimit(), all.boxLimit());
        // 0.03 viscous, half the loss factor, a quarter of the ratio at the corner, and what is written
        assertThat(ratio(all)).isCloseTo(0.03 + 0.05 + 0.125, within(1e-12));
        assertThat(ratio(modal)).isCloseTo(0.03 + 0.05 + 0.125 + 0.07, within(1e-12));
    }

    // second road: eigenvalues lambda of the equations in time; ratio -Re/|lambda| for viscous damping in proportion to the stiffness
    @Test
    void the_equations_in_time_die_out_by_the_damping_ratio() {
        List<Spring> springs = new ArrayList<>();
        int n = 1;
        for (double[] at : new double[][] {{0.024, 0.02, -0.004}, {-0.02, 0.024, 0.002}, {-0.024, -0.02, 0}, {0.02, -0.02, 0.006}}) {
            Vec k = new Vec(9e3 + 700 * n, 11e3, 14e3 - 900 * n);
            springs.add(new Spring("s", n++, new Vec(at[0], at[1], at[2]), k, k.times(2e-4), Vec.ZERO, Vec.ZERO,
                Vec.all(Double.POSITIVE_INFINITY), 0, new Rotation(new Vec(1, n, 2), 0.3 * n), false, 0));
        }
        Assembly assembly = new Assembly(Platforms.with(springs, new Vec(0.002, -0.001, 0.003), 0));
        DynamicStiffness stiffness = new DynamicStiffness(assembly);
        EigenDecompositionNonSymmetric eigen = new EigenDecompositionNonSymmetric(new RelativeMotion(assembly).dynamics());
        for (int mode = 0; mode < 6; mode++) {
            double w = assembly.modes().omega(mode);
            double z = stiffness.dampingRatio(mode);
            // C = 2e-4 K: z = 1e-4 w, and lambda = w (-z + j sqrt(1 - z^2))
            assertThat(z).isCloseTo(1e-4 * w, within(1e-12));
            long found = java.util.Arrays.stream(eigen.getEigenvalues())
                .filter(l -> Math.hypot(l.getReal() + z * w, l.getImaginary() - w * Math.sqrt(1 - z * z)) < 1e-6 * w).count();
            assertThat(found).as("mode %d", mode).isEqualTo(1);
        }
    }
}
