package quietband.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import quietband.model.Platform;
import quietband.model.Platform.Inertia;
import quietband.model.Platform.Spring;
import quietband.model.Rotation;
import quietband.model.Vec;

/** Turned springs and the inertia matrix, by another road: energy of small displacements instead of matrices. */
class TurnedSpringTest {

    @Test
    void ninety_degrees_about_z_take_x_to_y() {
        Vec turned = new Rotation(new Vec(0, 0, 1), Math.PI / 2).apply(new Vec(1, 0, 0));
        assertThat(turned).isEqualTo(new Vec(0, 1, 0));
        // and a third about the space diagonal permutes the axes x to y to z
        Vec third = new Rotation(new Vec(1, 1, 1), 2 * Math.PI / 3).apply(new Vec(1, 0, 0));
        assertThat(third.minus(new Vec(0, 1, 0)).length()).isLessThan(1e-15);
    }

    @Test
    void stiffness_of_a_turned_spring_is_the_energy_of_its_stretch() {
        Random random = new Random(5);
        for (int trial = 0; trial < 20; trial++) {
            Rotation turn = new Rotation(vec(random, 1), random.nextGaussian());
            Vec at = vec(random, 0.03);
            Vec centre = vec(random, 0.005);
            Vec k = new Vec(1e4, 2e4, 5e4);
            Spring s = new Spring("s", 1, at, k, Vec.ZERO, Vec.ZERO, Vec.ZERO, Vec.all(Double.POSITIVE_INFINITY), 0, turn,
                false, 0);
            Spring hold = Platforms.spring(2, new Vec(0.01, 0, 0), Vec.all(1), Vec.ZERO);
            Spring hold2 = Platforms.spring(3, new Vec(0, 0.01, 0.01), Vec.all(1), Vec.ZERO);
            Assembly with = new Assembly(Platforms.with(List.of(s, hold, hold2), centre, 0));
            double[] q = new double[6];
            for (int i = 0; i < 6; i++) {
                q[i] = random.nextGaussian() * (i < 3 ? 1e-3 : 1e-2);
            }
            double energy = 0;
            for (Spring each : List.of(s, hold, hold2)) {
                Vec arm = each.at().minus(centre);
                // u + theta x arm, seen along the principal axes: turned back by the opposite angle
                Vec u = new Vec(q[0] + q[4] * arm.z() - q[5] * arm.y(), q[1] + q[5] * arm.x() - q[3] * arm.z(),
                    q[2] + q[3] * arm.y() - q[4] * arm.x());
                Vec along = new Rotation(each.orientation().axis(), -each.orientation().angle()).apply(u);
                energy += each.stiffness().x() * along.x() * along.x() + each.stiffness().y() * along.y() * along.y()
                    + each.stiffness().z() * along.z() * along.z();
            }
            double quadratic = 0;
            for (int i = 0; i < 6; i++) {
                for (int j = 0; j < 6; j++) {
                    quadratic += q[i] * with.stiffness()[6 * i + j] * q[j];
                }
            }
            // rounding only
            assertThat(quadratic).isCloseTo(energy, within(1e-12 * energy));
        }
    }

    @Test
    void products_of_inertia_are_those_of_point_masses() {
        // four point masses; J = sum m (r^2 I - r r^T), so the off-diagonal of the matrix is minus the product
        double[][] at = {{0.02, 0.01, 0}, {-0.02, -0.01, 0.005}, {0.01, -0.02, -0.01}, {-0.01, 0.02, 0.005}};
        double m = 0.05;
        double xx = 0;
        double yy = 0;
        double zz = 0;
        double xy = 0;
        double xz = 0;
        double yz = 0;
        for (double[] r : at) {
            xx += m * (r[1] * r[1] + r[2] * r[2]);
            yy += m * (r[0] * r[0] + r[2] * r[2]);
            zz += m * (r[0] * r[0] + r[1] * r[1]);
            xy += m * r[0] * r[1];
            xz += m * r[0] * r[2];
            yz += m * r[1] * r[2];
        }
        Platform p = new Platform(4 * m, Optional.empty(), new Inertia(xx, yy, zz, xy, xz, yz), Vec.ZERO,
            Platforms.four(Platforms.Kind.viscous(4e4, 0)).springs(), 0, Optional.empty(), Optional.empty(), 1, Vec.all(1));
        double[] mass = new Assembly(p).mass();
        double[] theta = {0.3, -0.5, 0.7};
        double kinetic = 0;
        for (double[] r : at) {
            double vx = theta[1] * r[2] - theta[2] * r[1];
            double vy = theta[2] * r[0] - theta[0] * r[2];
            double vz = theta[0] * r[1] - theta[1] * r[0];
            kinetic += m * (vx * vx + vy * vy + vz * vz);
        }
        double quadratic = 0;
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                quadratic += theta[i] * mass[6 * (3 + i) + 3 + j] * theta[j];
            }
        }
        // rounding only
        assertThat(quadratic).isCloseTo(kinetic, within(1e-14));
    }

    private static Vec vec(Random random, double scale) {
        return new Vec(scale * random.nextGaussian(), scale * random.nextGaussian(), scale * random.nextGaussian());
    }
}
