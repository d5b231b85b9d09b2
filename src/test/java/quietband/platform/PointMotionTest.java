package quietband.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import quietband.model.Design;
import quietband.model.Rotation;
import quietband.model.Vec;
import quietband.response.Models;

/** Motion of points from the body's six coordinates, rotations, and the room that the body takes. */
class PointMotionTest {

    /** Second road: the point of a body turned by a small angle, exactly, with Rodrigues' rotation. */
    @Test
    void a_point_moves_as_a_rigid_body_turned_by_a_small_angle() {
        Random random = new Random(6);
        for (int trial = 0; trial < 50; trial++) {
            Vec p = vec(random);
            Vec u = vec(random);
            Vec theta = vec(random);
            double small = 1e-6;
            Vec moved = u.times(small).plus(new Rotation(theta, small * theta.length()).apply(p)).minus(p).times(1 / small);
            double[] b = PointMotion.of(p);
            double[] q = {u.x(), u.y(), u.z(), theta.x(), theta.y(), theta.z()};
            for (int i = 0; i < 3; i++) {
                // second order of the angle: half of theta^2 p times 1e-6
                assertThat(times(b, i, q)).isCloseTo(moved.get(i), within(2e-5));
            }
        }
    }

    @Test
    void along_the_principal_axes_of_a_turned_spring_the_motion_is_turned_back() {
        Random random = new Random(9);
        for (int trial = 0; trial < 50; trial++) {
            Rotation turn = new Rotation(vec(random), 3 * random.nextGaussian());
            Vec p = vec(random);
            double[] q = random.doubles(6, -1, 1).toArray();
            double[] straight = PointMotion.of(p);
            double[] turned = PointMotion.turned(p, turn);
            Vec motion = new Vec(times(straight, 0, q), times(straight, 1, q), times(straight, 2, q));
            Vec back = new Rotation(turn.axis(), -turn.angle()).apply(motion);
            for (int i = 0; i < 3; i++) {
                assertThat(times(turned, i, q)).isCloseTo(back.get(i), within(1e-13));
            }
        }
    }

    @Test
    void a_rotation_keeps_lengths_and_its_axis_and_quarter_turns_are_exact() {
        Random random = new Random(2);
        for (int trial = 0; trial < 50; trial++) {
            Rotation r = new Rotation(vec(random), 4 * random.nextGaussian());
            Vec p = vec(random);
            assertThat(r.apply(p).length()).isCloseTo(p.length(), within(1e-14 * (1 + p.length())));
            assertThat(r.apply(r.axis()).minus(r.axis()).length()).isLessThan(1e-14);
            // half the angle twice is the angle
            Rotation half = new Rotation(r.axis(), r.angle() / 2);
            assertThat(half.apply(half.apply(p)).minus(r.apply(p)).length()).isLessThan(1e-13);
        }
        assertThat(new Rotation(new Vec(0, 0, 5), -Math.PI / 2).apply(new Vec(1, 0, 0))).isEqualTo(new Vec(0, -1, 0));
        assertThat(new Rotation(new Vec(1, 0, 0), 5 * Math.PI / 2).apply(new Vec(0, 1, 0))).isEqualTo(new Vec(0, 0, 1));
        assertThat(new Rotation(new Vec(0, 1, 0), Math.PI).apply(new Vec(1, 2, 3))).isEqualTo(new Vec(-1, 2, -3));
    }

    // a block of 62 x 62 x 24 mm about (3, 0, 1) mm with a spring out at x = 40 mm: from -28 to 40 mm, 62 mm, -11 to 13 mm
    @Test
    void the_box_holds_the_outermost_points_and_the_way_both_sides() {
        Design d = Models.of(Models.oscillator("") + Models.platform("stiffness: 9 N/mm", ", centre_of_gravity: {x: 3 mm, z: 1 mm}")
            .replace("}]}\n", "}, {at: [{x: 40 mm}], stiffness: 1 N/mm}]}\n"));
        List<Vec> points = BodyExtent.points(d.platform().orElseThrow());
        // the centre, five springs, eight corners
        assertThat(points).hasSize(14).contains(new Vec(0.003, 0, 0.001), new Vec(0.04, 0, 0));
        Vec box = BodyExtent.box(d.platform().orElseThrow(), new Vec(0.001, 0.002, 0.003));
        assertThat(box.minus(new Vec(0.070, 0.066, 0.030)).length()).isLessThan(1e-15);
        // a body of no size still reaches from spring to spring
        Design bare = Models.of(Models.oscillator("") + Models.platform("stiffness: 9 N/mm", "")
            .replace("size: {x: 62 mm, y: 62 mm, z: 24 mm}", "inertia: {xx: 80 kg*mm^2, yy: 80 kg*mm^2, zz: 130 kg*mm^2}"));
        assertThat(BodyExtent.box(bare.platform().orElseThrow(), Vec.ZERO).minus(new Vec(0.048, 0.048, 0)).length()).isLessThan(1e-15);
    }

    private static double times(double[] rows, int row, double[] q) {
        double sum = 0;
        for (int c = 0; c < 6; c++) {
            sum += rows[6 * row + c] * q[c];
        }
        return sum;
    }

    private static Vec vec(Random random) {
        return new Vec(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    }
}
