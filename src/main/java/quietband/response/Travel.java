package quietband.response;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Vec;
import quietband.model.Vibration;
import quietband.platform.Assembly;
import quietband.platform.Lever;
import quietband.spectrum.LogCurve;
import quietband.spectrum.Quadrature;
import quietband.units.StandardGravity;

/**
 * How far the platform travels in its housing, m, per axis: the component along the axis, largest over the centre of gravity,
 * the spring places and, with a size, the corners of the block.
 *
 * @param sag          under 1 g along gravity; 0 without a direction of gravity
 * @param sustained    under the sustained acceleration, largest over the driven axes
 * @param shock        peak under the shock from rest, largest over the driven axes
 * @param random3Sigma three standard deviations over the whole profile
 */
public record Travel(Vec sag, Vec sustained, Vec shock, Vec random3Sigma) {

    /** What counts against the clearance: sustained and the larger of shock and random. */
    public Vec counted() {
        return new Vec(counted(Axis.X), counted(Axis.Y), counted(Axis.Z));
    }

    private double counted(Axis a) {
        return sustained.get(a) + Math.max(shock.get(a), random3Sigma.get(a));
    }

    /** The points whose travel counts, from the origin, m. */
    static List<Vec> points(Platform platform) {
        List<Vec> points = new ArrayList<>();
        points.add(platform.centreOfGravity());
        platform.springs().forEach(s -> points.add(s.at()));
        platform.size().ifPresent(size -> {
            for (int corner = 0; corner < 8; corner++) {
                points.add(platform.centreOfGravity().plus(new Vec(
                    (corner & 1) == 0 ? size.x() / 2 : -size.x() / 2,
                    (corner & 2) == 0 ? size.y() / 2 : -size.y() / 2,
                    (corner & 4) == 0 ? size.z() / 2 : -size.z() / 2)));
            }
        });
        return points;
    }

    /** Works out the travel of a design that has a platform. */
    static Travel of(Design design, Assembly assembly, ResidualResponse response) {
        List<Vec> points = points(design.platform().orElseThrow());
        Vibration v = design.vibration();
        double[][] random = random(design, assembly, response, points);
        double[] worst = new double[3];
        for (double[] p : random) {
            for (int i = 0; i < 3; i++) {
                worst[i] = Math.max(worst[i], 3 * p[i]);
            }
        }
        Vec sag = v.gravity().map(g -> steady(assembly, g, points)).orElse(Vec.ZERO);
        Vec sustained = Vec.ZERO;
        Vec shock = Vec.ZERO;
        for (Axis axis : v.axes()) {
            Vec unit = Vec.ZERO.with(axis, v.sustainedG());
            sustained = larger(sustained, steady(assembly, unit, points));
            if (v.shock().isPresent()) {
                shock = larger(shock, new ShockTravel(assembly).peak(v.shock().get(), axis, points));
            }
        }
        return new Travel(sag, sustained, shock, Vec.of(worst));
    }

    private static Vec larger(Vec a, Vec b) {
        return new Vec(Math.max(a.x(), b.x()), Math.max(a.y(), b.y()), Math.max(a.z(), b.z()));
    }

    /** Largest |component| over the points under a steady acceleration in g, from the modes' stiffness. */
    private static Vec steady(Assembly assembly, Vec accelerationG, List<Vec> points) {
        double[] q = steadyMotion(assembly, accelerationG);
        double[] most = new double[3];
        for (Vec p : points) {
            double[] b = Lever.of(assembly.fromCentre(p));
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
        double[][] k = new double[6][6];
        for (int i = 0; i < 6; i++) {
            System.arraycopy(assembly.stiffness(), 6 * i, k[i], 0, 6);
        }
        double[] force = new double[6];
        for (int i = 0; i < 3; i++) {
            force[i] = -assembly.bodyMass() * accelerationG.get(i) * StandardGravity.M_PER_S2;
        }
        return new LUDecomposition(new Array2DRowRealMatrix(k, false)).getSolver()
            .solve(new ArrayRealVector(force, false)).toArray();
    }

    /** The grid over every driven profile: seeded with the resonances, with a node at every end and kink. */
    static double[] profileGrid(Design design, Assembly assembly) {
        TreeSet<Double> ends = new TreeSet<>();
        for (Axis axis : Axis.ALL) {
            design.vibration().drive(axis).map(LogCurve::frequencies).ifPresent(f -> {
                ends.add(f[0]);
                ends.add(f[f.length - 1]);
            });
        }
        return ends.size() < 2 ? new double[0] : new Seeds(design, assembly).between(ends.first(), ends.last());
    }

    /** Standard deviation of the displacement in m of each point and component. */
    private static double[][] random(Design design, Assembly assembly, ResidualResponse response, List<Vec> points) {
        int n = points.size();
        double[] grid = profileGrid(design, assembly);
        double[] mean = new double[9 * n];
        PhaseNoise density = new PhaseNoise(design);
        double[] re = new double[9];
        double[] im = new double[9];
        if (grid.length > 1) {
            mean = Quadrature.integrate(grid, 9 * n, (f, into) -> {
                response.at(f);
                for (int p = 0; p < n; p++) {
                    response.motion().displacementOf(points.get(p), re, im);
                    for (int e = 0; e < 9; e++) {
                        double a = StandardGravity.M_PER_S2;
                        into[9 * p + e] = (re[e] * re[e] + im[e] * im[e]) * a * a
                            * density.density(Axis.ALL.get(e % 3), f);
                    }
                }
            });
        }
        double[][] sigma = new double[n][3];
        for (int p = 0; p < n; p++) {
            for (int i = 0; i < 3; i++) {
                int at = 9 * p + 3 * i;
                double power = design.vibration().together() ? mean[at] + mean[at + 1] + mean[at + 2]
                    : Math.max(mean[at], Math.max(mean[at + 1], mean[at + 2]));
                sigma[p][i] = Math.sqrt(power);
            }
        }
        return sigma;
    }
}
