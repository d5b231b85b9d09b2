package quietband.tuning.parts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import quietband.model.Platform.Spring;
import quietband.model.Rotation;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;

/** The stroke of turned springs: an angle by hand, and that it holds whatever moves within the travel and no more. */
class SpringStrokeTest {

    private static final Vec TRAVEL = new Vec(1e-3, 2e-3, 4e-3);

    private static Spring turned(Vec axis, double degrees) {
        Spring s = ModelFile.read(Path.of("models/rough-ride.yaml")).design().platform().orElseThrow().springs().get(0);
        return new Spring(s.group(), s.place(), s.at(), s.stiffness(), s.damping(), s.lossFactor(), s.relaxationRatio(),
            s.relaxationCornerHz(), s.mass(), new Rotation(axis, Math.toRadians(degrees)), s.compressionOnly(), s.preload());
    }

    @Test
    void springs_that_stand_upright_lie_down_or_lean_move_by_hand_worked_amounts() {
        // not turned: the travel along z and nothing else; rounding only
        assertThat(SpringStroke.of(List.of(turned(new Vec(0, 0, 1), 0)), TRAVEL)).isEqualTo(4e-3);
        assertThat(SpringStroke.of(List.of(turned(new Vec(0, 0, 1), 33)), TRAVEL)).isCloseTo(4e-3, within(1e-17));
        assertThat(SpringStroke.of(List.of(turned(new Vec(1, 0, 0), 90)), TRAVEL)).isEqualTo(2e-3);
        assertThat(SpringStroke.of(List.of(turned(new Vec(0, 1, 0), -90)), TRAVEL)).isEqualTo(1e-3);
        // 30 deg about x: z of the spring is (0, -1/2, sqrt(3)/2)
        assertThat(SpringStroke.of(List.of(turned(new Vec(1, 0, 0), 30)), TRAVEL)).isCloseTo(1e-3 + 2e-3 * Math.sqrt(3), within(1e-17));
        // of several the one that moves most
        assertThat(SpringStroke.of(List.of(turned(new Vec(1, 0, 0), 90), turned(new Vec(0, 1, 0), 90)), TRAVEL)).isEqualTo(2e-3);
    }

    @Test
    void no_motion_within_the_travel_goes_further_and_a_corner_of_it_goes_as_far() {
        Random random = new Random(5);
        for (int i = 0; i < 50; i++) {
            Spring s = turned(new Vec(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()), 360 * random.nextDouble());
            Vec n = s.orientation().apply(new Vec(0, 0, 1));
            double most = 0;
            for (int corner = 0; corner < 8; corner++) {
                double along = ((corner & 1) == 0 ? 1 : -1) * n.x() * TRAVEL.x() + ((corner & 2) == 0 ? 1 : -1) * n.y() * TRAVEL.y()
                    + ((corner & 4) == 0 ? 1 : -1) * n.z() * TRAVEL.z();
                most = Math.max(most, along);
            }
            assertThat(SpringStroke.of(List.of(s), TRAVEL)).isCloseTo(most, within(1e-17));
        }
    }
}
