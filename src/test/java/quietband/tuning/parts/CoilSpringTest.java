package quietband.tuning.parts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Coil springs against a published design and against a column integrated by other means. */
class CoilSpringTest {

    private static final double INCH = 0.0254;
    private static final double POUND_FORCE = 4.4482216152605;
    private static final double PSI = POUND_FORCE / (INCH * INCH);

    // System:  coil spring of the optimisation literature, d = 0.051689 in, D = 0.356718 in, n = 11.289
    // Input:   G = 1.15e7 psi, density 7.38342e-4 lbf s^2/in^4
    // Result:  rate 20.0249 lbf/in, surge 505.38 Hz, index 6.90124, Wahl factor 1.21621
    // Ref:     J. Arora, Introduction to Optimum Design, spring design problem (surge and stress coefficients read, inputs from memory)
    @Test
    void the_spring_of_the_optimisation_literature_has_its_published_figures() {
        WireMaterial wire = new WireMaterial("benchmark", 3e7 * PSI, 1.15e7 * PSI,
            7.38342e-4 * POUND_FORCE / Math.pow(INCH, 4), 1e9, 0, 0, 1,
            0.5);
        CoilSpring coil = new CoilSpring(wire, 0.051689 * INCH, 0.356718 * INCH, 11.289, 2 * INCH);
        // six digits are published
        assertThat(coil.rate() / (POUND_FORCE / INCH)).isCloseTo(20.0249, within(1e-4));
        assertThat(coil.surgeHz()).isCloseTo(505.38, within(0.006));
        assertThat(coil.index()).isCloseTo(6.90124, within(6e-6));
        assertThat(coil.wahl()).isCloseTo(1.21621, within(6e-6));
        // stress 8 F D K/(pi d^3) by hand for 10 lbf: 8*10*0.356718*1.21621/(pi*1.38099e-4) = 79998 psi (two products and a cube)
        assertThat(coil.stress(10 * POUND_FORCE) / PSI)
            .isCloseTo(8 * 10 * 0.356718 * 1.21621 / (Math.PI * Math.pow(0.051689, 3)), within(1.0));
    }

    /** Haringx' column between faces that stay parallel: w' = psi + Q'/S, psi' = M/B, integrated by Runge and Kutta. */
    private static double lateralRatio(double lambda, double xi, double e, double g) {
        // free length 1, rate 1 (so S and B of the free spring follow), diameter 1/lambda; compressed length L = 1 - xi, force P = xi
        double d = 1 / lambda;
        double length = 1 - xi;
        double force = xi;
        // of the free spring per length: bending B0 = k L0 D^2 / (4 (g/e + 1/2)), shear S0 = k L0 e/g; both shrink with the length
        double bending = length * d * d / (4 * (g / e + 0.5));
        double shear = length * e / g;
        // y = (w, psi); push T across at the far end and end moment M0: M(x) = M0 + P w + T x, shear angle (T + P psi)/S, shooting on M0
        double[] unit = shoot(length, force, bending, shear, 1, 0);
        double[] moment = shoot(length, force, bending, shear, 0, 1);
        double m0 = -unit[1] / moment[1];
        double w = unit[0] + m0 * moment[0];
        return 1 / Math.abs(w);
    }

    private static double[] shoot(double length, double p, double b, double s, double t, double m0) {
        int steps = 2000;
        double h = length / steps;
        double[] y = {0, 0};
        for (int i = 0; i < steps; i++) {
            double x = i * h;
            double[] k1 = slope(x, y, p, b, s, t, m0);
            double[] k2 = slope(x + h / 2, step(y, k1, h / 2), p, b, s, t, m0);
            double[] k3 = slope(x + h / 2, step(y, k2, h / 2), p, b, s, t, m0);
            double[] k4 = slope(x + h, step(y, k3, h), p, b, s, t, m0);
            for (int c = 0; c < 2; c++) {
                y[c] += h / 6 * (k1[c] + 2 * k2[c] + 2 * k3[c] + k4[c]);
            }
        }
        return y;
    }

    private static double[] step(double[] y, double[] k, double h) {
        return new double[] {y[0] + h * k[0], y[1] + h * k[1]};
    }

    private static double[] slope(double x, double[] y, double p, double b, double s, double t, double m0) {
        // Haringx: the shear force is that across the turned section, T + P psi
        return new double[] {y[1] + (t + p * y[1]) / s, (m0 - t * x - p * y[0]) / b};
    }

    @ParameterizedTest
    @CsvSource({"1.0, 0.05", "1.5, 0.1", "2.0, 0.2", "3.0, 0.1", "2.5, 0.25", "1.2, 0.4", "4.0, 0.02"})
    void the_lateral_rate_is_that_of_haringx_column(double lambda, double xi) {
        WireMaterial m = WireMaterial.table().get(0);
        double d = 1e-3;
        double diameter = 7e-3;
        CoilSpring coil = new CoilSpring(m, d, diameter, 4, lambda * diameter);
        // the fourth-order integration is good to 1e-9
        assertThat(coil.lateralRatio(xi * coil.freeLength())).isCloseTo(lateralRatio(lambda, xi, m.youngs(),
            m.shear()), within(1e-6));
    }

    @Test
    void without_load_the_lateral_compliance_is_that_of_bending_and_shear_together() {
        WireMaterial m = WireMaterial.table().get(0);
        CoilSpring coil = new CoilSpring(m, 1e-3, 7e-3, 4, 14e-3);
        double g = m.shear() / m.youngs();
        // L^3/(12 B) + L/S with the stiffnesses of a helical spring, in units of 1/k
        assertThat(1 / coil.lateralRatio(0)).isCloseTo(4 * (0.5 + g) / 3 + g, within(1e-12));
        assertThat(coil.lateralRatio(1e-4 * coil.freeLength())).isCloseTo(coil.lateralRatio(0), within(1e-3));
    }

    @Test
    void it_gives_way_sideways_where_its_lateral_rate_vanishes() {
        CoilSpring slender = new CoilSpring(WireMaterial.table().get(0), 1e-3, 8e-3, 6, 48e-3);
        double at = slender.buckling();
        assertThat(at).isBetween(0.0, 40e-3);
        assertThat(slender.lateralRatio(0.999 * at)).isPositive();
        assertThat(slender.lateralRatio(1.001 * at)).isNotPositive();
        CoilSpring stout = new CoilSpring(WireMaterial.table().get(0), 1e-3, 8e-3, 4, 10e-3);
        assertThat(stout.buckling()).isInfinite();
    }

    @Test
    void mass_and_lengths_are_those_of_the_wire() {
        WireMaterial m = WireMaterial.table().get(0);
        CoilSpring coil = new CoilSpring(m, 1e-3, 8e-3, 4, 12e-3);
        double length = Math.PI * 8e-3 * 4;
        assertThat(coil.activeMass()).isCloseTo(m.density() * length * Math.PI * 1e-6 / 4, within(1e-12));
        assertThat(coil.solidLength()).isCloseTo(6e-3, within(1e-15));
        assertThat(coil.surgeHz()).isCloseTo(Math.sqrt(coil.rate() / coil.activeMass()) / 2, within(1e-9));
    }
}
