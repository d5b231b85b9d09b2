package quietband.platform;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quietband.model.Platform;
import quietband.model.Platform.Inertia;
import quietband.model.Platform.Spring;
import quietband.model.Rotation;
import quietband.model.Vec;

/** Platforms for tests: four equal springs in the plane of the centre of gravity, so that each axis is a single oscillator. */
public final class Platforms {

    static final double MASS = 0.2;
    static final Vec SIZE = new Vec(0.06, 0.06, 0.024);

    private Platforms() { }

    /** What the springs of a platform have. */
    public record Kind(double stiffness, double damping, double loss, double ratio, double cornerHz, double mass) {

        static Kind viscous(double stiffness, double damping) {
            return new Kind(stiffness, damping, 0, 0, Double.POSITIVE_INFINITY, 0);
        }
    }

    /** Four springs of a kind, each with a quarter of the kind's stiffness, damping and mass. */
    public static Platform four(Kind kind) {
        List<Spring> springs = new ArrayList<>();
        double[][] at = {{0.02, 0.02}, {-0.02, 0.02}, {-0.02, -0.02}, {0.02, -0.02}};
        for (int n = 0; n < 4; n++) {
            springs.add(new Spring("corners", n + 1, new Vec(at[n][0], at[n][1], 0), Vec.all(kind.stiffness() / 4),
                Vec.all(kind.damping() / 4), Vec.all(kind.loss()), Vec.all(kind.ratio()), Vec.all(kind.cornerHz()),
                kind.mass() / 4, Rotation.NONE, false, 0));
        }
        return with(springs, Vec.ZERO, 0);
    }

    /** A platform of the standard body on given springs. */
    public static Platform with(List<Spring> springs, Vec centre, double modalDamping) {
        return new Platform(MASS, Optional.of(SIZE), Inertia.ofBlock(MASS, SIZE), centre, springs, modalDamping,
            Optional.empty(), Optional.empty(), Double.POSITIVE_INFINITY, Vec.all(Double.POSITIVE_INFINITY));
    }

    /** A plain spring. */
    public static Spring spring(int place, Vec at, Vec stiffness, Vec damping) {
        return new Spring("s", place, at, stiffness, damping, Vec.ZERO, Vec.ZERO, Vec.all(Double.POSITIVE_INFINITY), 0,
            Rotation.NONE, false, 0);
    }

    /** |A| of the centre of gravity along an axis driven along it. */
    static double transmissibility(Platform platform, double f, int axis) {
        PlatformMotion motion = new PlatformMotion(new Assembly(platform));
        motion.at(f);
        double[] re = new double[9];
        double[] im = new double[9];
        motion.accelerationOf(platform.centreOfGravity(), re, im);
        return Math.hypot(re[4 * axis], im[4 * axis]);
    }
}
