package quietband.tuning.parts;

import java.util.List;
import quietband.model.Platform.Spring;
import quietband.model.Vec;

/** How far the platform moves a spring along the spring's own z, which is the platform's only where the spring is not turned. */
public final class SpringStroke {

    private static final Vec Z = new Vec(0, 0, 1);

    private SpringStroke() { }

    /**
     * The largest stroke of some springs, m. With n the direction of a spring's z it is |n_x| t_x + |n_y| t_y + |n_z| t_z: no motion
     * within the travel t goes further along n. Of the steady and random motion alone {@code response.Slack} has the sharp figure.
     *
     * @param travel largest motion either way along the platform's axes, m
     */
    public static double of(List<Spring> springs, Vec travel) {
        double most = 0;
        for (Spring s : springs) {
            Vec n = s.orientation().apply(Z).map(Math::abs);
            most = Math.max(most, n.x() * travel.x() + n.y() * travel.y() + n.z() * travel.z());
        }
        return most;
    }
}
