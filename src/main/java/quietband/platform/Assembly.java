package quietband.platform;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.RealMatrix;
import quietband.model.Platform;
import quietband.model.Platform.Spring;
import quietband.model.Vec;

/**
 * The platform's matrices, 6 x 6 row by row (length 36), in SI units. The translation part of M is m I, the rotation
 * part the inertia about the centre of gravity with the products entering negatively.
 */
public final class Assembly {

    /**
     * A relaxing part: stiffness matrix sum B^T diag(N k) B of all branches that share one corner, rad/s. The branch
     * is a spring N k in series with a damper, rho = N k j w/(j w + corner).
     */
    public record Relaxing(double corner, double[] stiffness) { }

    /**
     * One principal axis of a spring that has mass.
     *
     * @param row       its row of Q^T B (length 6); the first three entries are its direction
     * @param stiffness k in N/m, above 0
     * @param loss      loss factor
     * @param mass      of the spring, kg
     */
    public record Line(double[] row, double stiffness, double loss, double mass) { }

    /**
     * All lines with the same stiffness, loss factor and mass, which behave alike.
     *
     * @param outer sum of row^T row over them, 6 x 6 row by row (length 36)
     * @param count how many
     */
    record LineGroup(double stiffness, double loss, double mass, double[] outer, int count) {

        /** The group with one more line. */
        private LineGroup with(Line line) {
            double[] sum = outer.clone();
            addRank1(sum, line.row(), 0, 1);
            return new LineGroup(stiffness, loss, mass, sum, count + 1);
        }
    }

    private final double[] mass = new double[36];
    private final double[] stiffness = new double[36];
    private final double[] plainStiffness = new double[36];
    private final double[] plainLoss = new double[36];
    private final double[] loss = new double[36];
    private final double[] damping = new double[36];
    private final List<Relaxing> relaxing = new ArrayList<>();
    private final List<Line> lines = new ArrayList<>();
    private List<LineGroup> groups;
    private final Vec centre;
    private final double bodyMass;
    private Modes modes;

    /**
     * Builds the matrices of a platform.
     *
     * @throws SingularPlatformException when a mode would be at 0 Hz
     */
    public Assembly(Platform platform) {
        this(platform, true);
    }

    private Assembly(Platform platform, boolean checked) {
        centre = platform.centreOfGravity();
        bodyMass = platform.mass();
        fillMass(platform);
        TreeMap<Double, double[]> byCorner = new TreeMap<>();
        for (Spring s : platform.springs()) {
            add(s, byCorner);
        }
        byCorner.forEach((corner, k) -> relaxing.add(new Relaxing(corner, k)));
        if (checked || platform.modalDamping() != 0) {
            modes().addModalDamping(platform.modalDamping(), damping);
        }
    }

    /** For searches: modes are worked out when they are asked for, so that only then one at 0 Hz is an error. */
    public static Assembly unchecked(Platform platform) {
        return new Assembly(platform, false);
    }

    private void fillMass(Platform platform) {
        Platform.Inertia j = platform.inertia();
        double m = platform.mass();
        double[] rotation = {j.xx(), -j.xy(), -j.xz(), -j.xy(), j.yy(), -j.yz(), -j.xz(), -j.yz(), j.zz()};
        for (int i = 0; i < 3; i++) {
            mass[7 * i] = m;
            for (int k = 0; k < 3; k++) {
                mass[6 * (3 + i) + 3 + k] = rotation[3 * i + k];
            }
        }
    }

    private void add(Spring s, Map<Double, double[]> byCorner) {
        double[] b = PointMotion.turned(s.at().minus(centre), s.orientation());
        for (int i = 0; i < 3; i++) {
            double k = s.stiffness().get(i);
            double eta = s.lossFactor().get(i);
            addRank1(stiffness, b, i, k);
            addRank1(loss, b, i, k * eta);
            addRank1(damping, b, i, s.damping().get(i));
            if (s.mass() > 0 && k > 0) {
                lines.add(new Line(Arrays.copyOfRange(b, 6 * i, 6 * i + 6), k, eta, s.mass()));
            } else {
                addRank1(plainStiffness, b, i, k);
                addRank1(plainLoss, b, i, k * eta);
            }
            double branch = s.relaxationRatio().get(i) * k;
            double cornerHz = s.relaxationCornerHz().get(i);
            if (branch > 0 && Double.isFinite(cornerHz)) {
                addRank1(byCorner.computeIfAbsent(2 * Math.PI * cornerHz, c -> new double[36]), b, i, branch);
            }
        }
    }

    /** Six rows of six, written one after another (length 36), as a matrix; copied. */
    public static RealMatrix square(double[] rows) {
        RealMatrix matrix = new Array2DRowRealMatrix(6, 6);
        for (int i = 0; i < 6; i++) {
            matrix.setRow(i, Arrays.copyOfRange(rows, 6 * i, 6 * i + 6));
        }
        return matrix;
    }

    /** Adds value * row_i^T row_i of rows of six to a 6 x 6 matrix (modified). */
    public static void addRank1(double[] matrix, double[] rows, int i, double value) {
        if (value == 0) {
            return;
        }
        for (int a = 0; a < 6; a++) {
            double left = value * rows[6 * i + a];
            for (int c = 0; c < 6; c++) {
                matrix[6 * a + c] += left * rows[6 * i + c];
            }
        }
    }

    /** Offset of a point from the centre of gravity: its position less that of the centre; m. */
    public Vec fromCentre(Vec position) {
        return position.minus(centre);
    }

    /** Mass of the body, kg. */
    public double bodyMass() {
        return bodyMass;
    }

    /** M, kg and kg m^2; not copied. */
    public double[] mass() {
        return mass;
    }

    /** The real static stiffness sum B^T diag(k) B of all springs; not copied. */
    public double[] stiffness() {
        return stiffness;
    }

    /** Static stiffness of the springs without mass only; not copied. */
    double[] plainStiffness() {
        return plainStiffness;
    }

    /** The imaginary (lossy) part sum B^T diag(k eta) B of the springs without mass only; not copied. */
    double[] plainLoss() {
        return plainLoss;
    }

    /** The imaginary (lossy) part sum B^T diag(k eta) B of all springs; not copied. */
    public double[] loss() {
        return loss;
    }

    /** Viscous damping of all springs and the modal damping; not copied. */
    public double[] damping() {
        return damping;
    }

    /** The relaxing parts, one per distinct corner. */
    public List<Relaxing> relaxing() {
        return List.copyOf(relaxing);
    }

    /** The principal axes of springs with mass. */
    public List<Line> lines() {
        return List.copyOf(lines);
    }

    /** The lines, gathered into groups that behave alike. */
    synchronized List<LineGroup> lineGroups() {
        if (groups == null) {
            groups = gathered();
        }
        return groups;
    }

    private List<LineGroup> gathered() {
        Map<List<Double>, LineGroup> alike = new LinkedHashMap<>();
        for (Line line : lines) {
            List<Double> kind = List.of(line.stiffness(), line.loss(), line.mass());
            alike.put(kind, alike.getOrDefault(kind,
                new LineGroup(line.stiffness(), line.loss(), line.mass(), new double[36], 0)).with(line));
        }
        return List.copyOf(alike.values());
    }

    /** The undamped modes of M and the static stiffness. */
    public synchronized Modes modes() {
        if (modes == null) {
            modes = new Modes(this);
        }
        return modes;
    }

    /** Lowest standing wave of any spring with mass, Hz; infinite without such. */
    public double surgeHz() {
        return lines().stream().mapToDouble(l -> Math.sqrt(l.stiffness() / l.mass()) / 2).min().orElse(Double.POSITIVE_INFINITY);
    }
}
