package quietband.response.travel;

import java.util.List;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import quietband.demand.RequirementResult;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Vec;
import quietband.platform.Assembly;
import quietband.platform.BodyExtent;
import quietband.platform.PointMotion;
import quietband.response.Effort;
import quietband.units.StandardGravity;

/**
 * How far the platform travels in its housing, m, per axis: the component along the axis, largest over the centre of gravity,
 * the spring places and, with a size, the corners of the block.
 *
 * @param sag          under 1 g along gravity; down is -z when the model does not say
 * @param sustained    under the sustained acceleration, largest over the driven axes
 * @param shock        peak under the shock from rest, largest over the driven axes
 * @param random3Sigma three standard deviations over the whole profile
 */
public record Travel(Vec sag, Vec sustained, Vec shock, Vec random3Sigma) {

    // per period of the highest mode: 1e-4 of its part
    private static final double COARSE_STEPS = 5;
    private static final Vec DOWN = new Vec(0, 0, -1);

    /** What counts against the clearance: sustained and the larger of shock and random. */
    public Vec counted() {
        return Vec.perAxis(this::counted);
    }

    private double counted(Axis a) {
        return sustained.get(a) + Math.max(shock.get(a), random3Sigma.get(a));
    }

    /** What counts of the axis that uses most of its clearance (m), in mm. */
    public RequirementResult use(Vec clearance) {
        RequirementResult worst = null;
        for (Axis axis : Axis.ALL) {
            RequirementResult r = RequirementResult.share("travel", counted(axis) * 1e3, clearance.get(axis) * 1e3, "mm", axis.letter());
            worst = worst == null || r.usedShare() > worst.usedShare() ? r : worst;
        }
        return worst;
    }

    /** Works out the travel of a design that has a platform. */
    public static Travel of(Design design, Assembly assembly, RandomMotion motion, Effort effort) {
        Vec sag = steady(assembly, design.vibration().gravity().orElse(DOWN), BodyExtent.points(design.platform().orElseThrow()));
        Vec shock = effort == Effort.FULL ? shock(design, assembly) : shock(design, new ShockTravel(assembly, 2, COARSE_STEPS));
        return new Travel(sag, sustained(design, assembly), shock, random(design, assembly, motion));
    }

    /** The same for searches, without the sag: of a shock only the pulse and two periods of the lowest mode after it, if that is enough. */
    public static Travel of(Design design, Assembly assembly, RandomMotion motion, boolean firstSwing) {
        ShockTravel shock = firstSwing ? new ShockTravel(assembly, 2, ShockTravel.STEPS_PER_PERIOD) : new ShockTravel(assembly);
        return new Travel(Vec.ZERO, sustained(design, assembly), shock(design, shock), random(design, assembly, motion));
    }

    private static Vec random(Design design, Assembly assembly, RandomMotion motion) {
        double[] most = new double[3];
        for (Vec p : BodyExtent.points(design.platform().orElseThrow())) {
            double[] b = PointMotion.of(assembly.fromCentre(p));
            for (int i = 0; i < 3; i++) {
                most[i] = Math.max(most[i], motion.peak(b, 6 * i));
            }
        }
        return Vec.of(most);
    }

    /** Travel under the sustained acceleration, largest over the driven axes, m. */
    public static Vec sustained(Design design, Assembly assembly) {
        List<Vec> points = BodyExtent.points(design.platform().orElseThrow());
        Vec sustained = Vec.ZERO;
        for (Axis axis : design.vibration().axes()) {
            Vec unit = Vec.ZERO.with(axis, design.vibration().sustainedG());
            sustained = larger(sustained, steady(assembly, unit, points));
        }
        return sustained;
    }

    /** Peak travel under the shock from rest, largest over the driven axes, m; zero without a shock. */
    public static Vec shock(Design design, Assembly assembly) {
        return shock(design, new ShockTravel(assembly));
    }

    private static Vec shock(Design design, ShockTravel travel) {
        List<Vec> points = BodyExtent.points(design.platform().orElseThrow());
        Vec shock = Vec.ZERO;
        if (design.vibration().shock().isPresent()) {
            for (Axis axis : design.vibration().axes()) {
                shock = larger(shock, travel.peak(design.vibration().shock().get(), axis, points));
            }
        }
        return shock;
    }

    private static Vec larger(Vec a, Vec b) {
        return Vec.perAxis(axis -> Math.max(a.get(axis), b.get(axis)));
    }

    /** Largest |component| over the points under a steady acceleration in g, from the modes' stiffness. */
    private static Vec steady(Assembly assembly, Vec accelerationG, List<Vec> points) {
        double[] q = steadyMotion(assembly, accelerationG);
        double[] most = new double[3];
        for (Vec p : points) {
            double[] b = PointMotion.of(assembly.fromCentre(p));
            for (int i = 0; i < 3; i++) {
                double u = 0;
                for (int c = 0; c < 6; c++) {
                    u += b[6 * i + c] * q[c];
                }
                most[i] = Math.max(most[i], Math.abs(u));
            }
        }
        return Vec.of(most);
    }

    /** The six relative coordinates under a steady acceleration of the housing in g: -K^-1 M T a. */
    static double[] steadyMotion(Assembly assembly, Vec accelerationG) {
        double[] force = new double[6];
        for (int i = 0; i < 3; i++) {
            force[i] = -assembly.bodyMass() * accelerationG.get(i) * StandardGravity.M_PER_S2;
        }
        return new LUDecomposition(Assembly.square(assembly.stiffness())).getSolver()
            .solve(new ArrayRealVector(force, false)).toArray();
    }
}
