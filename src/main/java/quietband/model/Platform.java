package quietband.model;

import java.util.List;
import java.util.Optional;

/**
 * The sprung platform: a rigid body on springs. Positions are measured from the origin.
 *
 * @param mass            in kg, above 0
 * @param size            edge lengths of the block in m, when given; its corners are at centre of gravity +- size/2
 * @param inertia         about the centre of gravity
 * @param centreOfGravity in m
 * @param springs         one entry per spring: each place of each named group
 * @param modalDamping    damping ratio added to every mode
 * @param clearance       free travel each way in m, at rest under gravity, when given
 * @param stops           bump stops beyond the clearance, when given
 * @param massLimit       largest allowed mass in kg; infinite when not given
 * @param boxLimit        largest allowed outer size in m; infinite when not given
 */
public record Platform(double mass, Optional<Vec> size, Inertia inertia, Vec centreOfGravity, List<Spring> springs,
                       double modalDamping, Optional<Vec> clearance, Optional<Stops> stops,
                       double massLimit, Vec boxLimit) {

    public Platform {
        springs = List.copyOf(springs);
    }

    /**
     * Inertia about the centre of gravity in kg m^2. The products are +integral of (x y) dm and enter the
     * inertia matrix with a minus sign.
     */
    public record Inertia(double xx, double yy, double zz, double xy, double xz, double yz) {

        /** A uniform block of the given edge lengths in m: J_xx = m (b^2 + c^2)/12 and so on. */
        public static Inertia ofBlock(double mass, Vec size) {
            double a = size.x() * size.x();
            double b = size.y() * size.y();
            double c = size.z() * size.z();
            return new Inertia(mass * (b + c) / 12, mass * (a + c) / 12, mass * (a + b) / 12, 0, 0, 0);
        }
    }

    /**
     * One spring.
     *
     * @param group               name of the group it was written in
     * @param place               its number in the group's list of places, from 1
     * @param at                  where it acts, from the origin, in m
     * @param stiffness           along its principal axes, N/m, at least 0
     * @param damping             viscous, along its principal axes, N s/m
     * @param lossFactor          along its principal axes
     * @param relaxationRatio     stiffness of the relaxing branch over that of the spring, per principal axis
     * @param relaxationCornerHz  corner of the relaxing branch in Hz; infinite where there is none
     * @param mass                of the spring itself, kg, at least 0
     * @param orientation         takes the platform's axes to the principal axes
     * @param compressionOnly     cannot pull along its own z
     * @param preload             compression force at rest in N; used when compression only
     */
    public record Spring(String group, int place, Vec at, Vec stiffness, Vec damping, Vec lossFactor,
                         Vec relaxationRatio, Vec relaxationCornerHz, double mass, Rotation orientation,
                         boolean compressionOnly, double preload) {

        /** How messages call it, e.g. {@code corners[2]}. */
        public String label() {
            return group + "[" + place + "]";
        }
    }

    /** Bump stops: stiffness per axis in N/m and damping ratio z of the damper 2 z sqrt(k m). */
    public record Stops(Vec stiffness, Vec dampingRatio) { }
}
