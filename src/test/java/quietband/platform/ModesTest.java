package quietband.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import quietband.model.Platform.Spring;
import quietband.model.Vec;
import quietband.platform.Platforms.Kind;

class ModesTest {

    // System:  block on four vertical corner springs below its centre, motion in the x-z plane: sway coupled with rocking
    // Input:   kx/kz, height az of the centre over the springs, half spacing ax, radius of gyration rho about y
    // Result:  (f/fz)^2 = (A -+ sqrt(A^2 - B))/2, A = (kx/kz)(1 + az^2/rho^2) + ax^2/rho^2, B = 4 (kx/kz) ax^2/rho^2
    // Ref:     Harris' Shock and Vibration Handbook, chapter 3 (memory), confirmed against an eigen-solver
    // Note:    exact; 1e-9 is rounding
    @Test
    void coupled_sway_and_rocking_are_where_the_handbook_puts_them() {
        double kx = 9000;
        double kz = 11000;
        double ax = 0.024;
        double az = 0.007;
        List<Spring> springs = new ArrayList<>();
        int n = 1;
        for (double sx : new double[] {1, -1}) {
            for (double sy : new double[] {1, -1}) {
                springs.add(Platforms.spring(n++, new Vec(sx * ax, sy * ax, -az), new Vec(kx, kx, kz), Vec.ZERO));
            }
        }
        Modes modes = new Assembly(Platforms.with(springs, Vec.ZERO, 0)).modes();
        double rho2 = (Platforms.SIZE.x() * Platforms.SIZE.x() + Platforms.SIZE.z() * Platforms.SIZE.z()) / 12;
        double fz = Math.sqrt(4 * kz / Platforms.MASS) / (2 * Math.PI);
        double a = kx / kz * (1 + az * az / rho2) + ax * ax / rho2;
        double b = 4 * kx / kz * ax * ax / rho2;
        for (double sign : new double[] {-1, 1}) {
            double expected = fz * Math.sqrt((a + sign * Math.sqrt(a * a - b)) / 2);
            // the plate is square: each pair appears in both planes
            long found = 0;
            for (int i = 0; i < 6; i++) {
                found += Math.abs(modes.frequencyHz(i) / expected - 1) < 1e-9 ? 1 : 0;
            }
            assertThat(found).isEqualTo(2);
        }
    }

    @Test
    void modes_are_mass_normalised_and_diagonalise_the_stiffness() {
        Assembly a = new Assembly(Platforms.with(Platforms.four(Kind.viscous(6e4, 1)).springs(),
            new Vec(0.001, 0.002, -0.003), 0));
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                double w2 = a.modes().omega(i) * a.modes().omega(i);
                assertThat(a.modes().project(a.mass(), i, j)).isCloseTo(i == j ? 1 : 0, within(1e-10));
                assertThat(a.modes().project(a.stiffness(), i, j)).isCloseTo(i == j ? w2 : 0, within(1e-9 * w2));
            }
        }
    }

    @Test
    void repeated_modes_of_a_square_platform_are_told_apart_by_axis() {
        Modes modes = new Assembly(Platforms.four(Kind.viscous(6e4, 0))).modes();
        List<String> words = new ArrayList<>();
        for (int n = 0; n < 6; n++) {
            words.add(modes.inWords(n));
        }
        assertThat(words).containsExactlyInAnyOrder("translation x", "translation y", "translation z", "rotation about x",
            "rotation about y",
            "rotation about z");
    }

    @Test
    void a_platform_that_nothing_holds_about_an_axis_is_refused_with_the_axis() {
        List<Spring> line = List.of(Platforms.spring(1, new Vec(0.02, 0, 0), Vec.all(1e4), Vec.ZERO),
            Platforms.spring(2, new Vec(-0.02, 0, 0), Vec.all(1e4), Vec.ZERO));
        assertThatThrownBy(() -> new Assembly(Platforms.with(line, Vec.ZERO, 0)))
            .isInstanceOf(SingularPlatformException.class).hasMessageContaining("rotation about x").hasMessageContaining("0 Hz");
    }

    @Test
    void the_damping_ratio_of_a_viscous_lossy_spring_adds_half_the_loss_factor() {
        double w = 2 * Math.PI * 80;
        double k = Platforms.MASS * w * w;
        double c = 2 * 0.03 * Platforms.MASS * w;
        DynamicStiffness d = new DynamicStiffness(new Assembly(
            Platforms.four(new Kind(k, c, 0.1, 0, Double.POSITIVE_INFINITY, 0))));
        // 0.03 viscous and eta/2 = 0.05; exact for a single oscillator
        for (int n = 0; n < 6; n++) {
            if (Math.abs(new Assembly(Platforms.four(Kind.viscous(k, c))).modes().frequencyHz(n) - 80) < 1e-6) {
                assertThat(d.dampingRatio(n)).isCloseTo(0.08, within(1e-12));
            }
        }
    }
}
