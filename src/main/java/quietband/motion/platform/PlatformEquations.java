package quietband.motion.platform;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import quietband.model.Platform;
import quietband.model.Platform.Spring;
import quietband.motion.signal.LossModel;
import quietband.motion.signal.StateSpace;
import quietband.platform.Assembly;
import quietband.platform.PointMotion;
import quietband.units.StandardGravity;

/**
 * The platform relative to its housing as first-order equations, loss factors, relaxation and the waves of massive springs
 * included. Coordinates are the undamped modes of body and lines together, q = P eta; the state is
 * {@code [Omega eta, eta', s]} with one s for every relaxing branch (its damper's end):
 * <pre>
 *   eta'' = -Omega^2 eta - P^T C P eta' - P^T K_extra P eta - sum_b P^T v_b mu_b (v_b q - s_b) - P^T N a
 *   s_b'  = corner_b (v_b q - s_b)
 * </pre>
 * so that without damping the state only turns and its length is the energy.
 */
public final class PlatformEquations {

    /** A spring mu along a row in series with a damper mu/corner; belongs to a compression-only spring's axis or, with -1, to none. */
    record Branch(double[] row, double stiffness, double corner, int spring) { }

    private final Assembly assembly;
    private final Platform platform;
    private final LossModel loss;
    private final LineModes lines;
    private final List<Branch> branches = new ArrayList<>();
    private final List<Contact> contacts;
    private final double[] extra = new double[36];
    private final double[] damping;
    private final Map<Double, LossFit> fits = new TreeMap<>();
    private final int modes;
    private double[] omega;
    private double[][] shape;
    private RealMatrix body;
    private double[][] waveDamping;
    private double[][] drive;

    /**
     * Builds the equations.
     *
     * @param nonlinear whether stops and compression-only springs may act (see {@link #contacts()})
     */
    PlatformEquations(Platform platform, Assembly assembly, LossModel loss, boolean nonlinear) {
        this.platform = platform;
        this.assembly = assembly;
        this.loss = loss;
        this.lines = new LineModes(assembly, loss.topHz(), loss.single());
        this.damping = assembly.damping().clone();
        this.modes = 6 + lines.oscillators().size();
        this.contacts = new ArrayList<>(nonlinear ? Contact.stops(platform) : List.of());
        if (loss.single()) {
            for (int i = 0; i < 36; i++) {
                damping[i] += assembly.loss()[i] / loss.omega();
            }
        }
        Map<Double, double[]> byCorner = new TreeMap<>();
        for (int s = 0; s < platform.springs().size(); s++) {
            add(s, nonlinear, byCorner);
        }
        byCorner.forEach((corner, k) -> RankRows.of(k, assembly.mass())
            .forEach(row -> branches.add(new Branch(row, 1, corner, -1))));
        modal();
    }

    private void add(int number, boolean nonlinear, Map<Double, double[]> byCorner) {
        Spring s = platform.springs().get(number);
        double[] b = PointMotion.turned(assembly.fromCentre(s.at()), s.orientation());
        for (int i = 0; i < 3; i++) {
            double k = s.stiffness().get(i);
            double eta = s.lossFactor().get(i);
            double[] row = Arrays.copyOfRange(b, 6 * i, 6 * i + 6);
            boolean loose = nonlinear && s.compressionOnly() && i == 2 && k > 0;
            double cornerHz = s.relaxationCornerHz().get(i);
            if (Double.isFinite(cornerHz)) {
                branch(row, s.relaxationRatio().get(i) * k, 2 * Math.PI * cornerHz, loose ? number : -1, byCorner);
            }
            double held = k;
            double damper = s.damping().get(i);
            if (eta != 0 && loss.single()) {
                damper += eta * k / loss.omega();
            } else if (eta != 0) {
                LossFit fit = fits.computeIfAbsent(eta, e -> new LossFit(e, assembly.modes().omega(0),
                    assembly.modes().omega(5), 2 * Math.PI * loss.topHz()));
                Assembly.addRank1(extra, row, 0, fit.rest() * k);
                held += fit.rest() * k;
                for (int m = 0; m < fit.corners().length; m++) {
                    branch(row, fit.branch(m) * k, fit.corners()[m], loose ? number : -1, byCorner);
                }
            }
            if (loose) {
                contacts.add(new Contact("spring " + s.label(), row, s.preload() / k, -held, -damper, number));
            }
        }
    }

    private void branch(double[] row, double stiffness, double corner, int spring, Map<Double, double[]> byCorner) {
        if (stiffness <= 0) {
            return;
        }
        if (spring >= 0) {
            branches.add(new Branch(row, stiffness, corner, spring));
        } else {
            Assembly.addRank1(byCorner.computeIfAbsent(corner, c -> new double[36]), row, 0, stiffness);
        }
    }

    /** Modes of body and lines together, and damping and drive in them. */
    private void modal() {
        double[][] m = new double[modes][modes];
        double[][] k = new double[modes][modes];
        double[][] n = new double[modes][3];
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                m[i][j] = assembly.mass()[6 * i + j];
                k[i][j] = (assembly.stiffness()[6 * i + j] + assembly.stiffness()[6 * j + i]) / 2;
            }
            for (int a = 0; a < 3; a++) {
                n[i][a] = m[i][a];
            }
        }
        for (double[] row : lines.rows()) {
            for (int i = 0; i < 6; i++) {
                for (int j = 0; j < 6; j++) {
                    m[i][j] += row[i] * row[j] / 3;
                }
                for (int a = 0; a < 3; a++) {
                    n[i][a] += row[i] * row[a] / 2;
                }
            }
        }
        double[] own = new double[modes];
        for (int l = 6; l < modes; l++) {
            LineModes.Oscillator o = lines.oscillators().get(l - 6);
            m[l][l] = 1;
            k[l][l] = o.omega2();
            own[l] = o.loss() * o.omega2() / (loss.single() ? loss.omega() : Math.sqrt(o.omega2()));
            for (int i = 0; i < 6; i++) {
                m[i][l] = o.platform() * o.row()[i];
                m[l][i] = m[i][l];
            }
            for (int a = 0; a < 3; a++) {
                n[l][a] = o.housing() * o.row()[a];
            }
        }
        eigen(new Array2DRowRealMatrix(m, false), new Array2DRowRealMatrix(k, false));
        drive = new double[modes][3];
        waveDamping = new double[modes][modes];
        for (int a = 0; a < modes; a++) {
            for (int i = 0; i < modes; i++) {
                for (int j = 0; j < 3; j++) {
                    drive[a][j] -= shape[i][a] * n[i][j] * StandardGravity.M_PER_S2;
                }
            }
            for (int b = 0; b < modes; b++) {
                for (int l = 6; l < modes; l++) {
                    waveDamping[a][b] += shape[l][a] * own[l] * shape[l][b];
                }
            }
        }
    }

    private void eigen(RealMatrix m, RealMatrix k) {
        RealMatrix inverse = new LUDecomposition(new CholeskyDecomposition(m).getL()).getSolver().getInverse();
        RealMatrix s = inverse.multiply(k).multiply(inverse.transpose());
        EigenDecompositionSymmetric e = new EigenDecompositionSymmetric(s.add(s.transpose()).scalarMultiply(0.5));
        omega = new double[modes];
        for (int i = 0; i < modes; i++) {
            omega[i] = Math.sqrt(e.getEigenvalue(i));
        }
        RealMatrix all = inverse.transposeMultiply(e.getV());
        shape = all.getData();
        body = all.getSubMatrix(0, 5, 0, modes - 1);
    }

    public int states() {
        return 2 * modes + branches.size();
    }

    /** Stops and compression-only springs, in the order of the bits of a set. */
    List<Contact> contacts() {
        return contacts;
    }

    /** Passive fits in use, by loss factor. */
    public Map<Double, LossFit> fits() {
        return fits;
    }

    /** Relative error of the waves kept for massive springs at the top frequency. */
    public double lineError() {
        return lines.error();
    }

    /**
     * f and g (inputs: acceleration of the housing in g on x, y, z, and the number 1) with a set of contacts acting.
     *
     * @param acting bit i set: contact i is beyond its threshold
     */
    double[][][] matrices(int acting) {
        double[] stiff = extra.clone();
        double[] damp = damping.clone();
        double[] push = new double[6];
        for (int i = 0; i < contacts.size(); i++) {
            if ((acting >> i & 1) != 0) {
                Contact c = contacts.get(i);
                Assembly.addRank1(stiff, c.row(), 0, c.stiffness());
                Assembly.addRank1(damp, c.row(), 0, c.damping());
                for (int j = 0; j < 6; j++) {
                    push[j] += c.stiffness() * c.threshold() * c.row()[j];
                }
            }
        }
        double[][] f = new double[states()][states()];
        double[][] g = new double[states()][4];
        for (int b = 0; b < branches.size(); b++) {
            branch(b, acting, stiff, f, g);
        }
        double[][] k = project(stiff);
        double[][] c = project(damp);
        double[] pushed = body.preMultiply(push);
        for (int a = 0; a < modes; a++) {
            f[a][modes + a] = omega[a];
            f[modes + a][a] -= omega[a];
            for (int j = 0; j < modes; j++) {
                f[modes + a][j] -= k[a][j] / omega[j];
                f[modes + a][modes + j] -= c[a][j] + waveDamping[a][j];
            }
            System.arraycopy(drive[a], 0, g[modes + a], 0, 3);
            g[modes + a][3] = pushed[a];
        }
        return new double[][][] {f, g};
    }

    private void branch(int number, int acting, double[] stiff, double[][] f, double[][] g) {
        Branch b = branches.get(number);
        int at = 2 * modes + number;
        f[at][at] = -b.corner();
        double loose = looseAt(b, acting);
        if (!Double.isNaN(loose)) {
            g[at][3] = b.corner() * loose;
            return;
        }
        Assembly.addRank1(stiff, b.row(), 0, b.stiffness());
        double[] v = body.preMultiply(b.row());
        for (int a = 0; a < modes; a++) {
            f[modes + a][at] = b.stiffness() * v[a];
            f[at][a] = b.corner() * v[a] / omega[a];
        }
    }

    /** The length at which a branch's spring has been left, m; NaN while it holds. */
    private double looseAt(Branch b, int acting) {
        for (int i = 0; i < contacts.size(); i++) {
            if ((acting >> i & 1) != 0 && b.spring() >= 0 && contacts.get(i).spring() == b.spring()) {
                return contacts.get(i).threshold();
            }
        }
        return Double.NaN;
    }

    private double[][] project(double[] matrix) {
        return body.transposeMultiply(Assembly.square(matrix).multiply(body)).getData();
    }

    /** The row of the state that gives a combination (length 6) of the body's coordinates, m. */
    double[] displacement(double[] row) {
        double[] c = Arrays.copyOf(body.preMultiply(row), states());
        for (int a = 0; a < modes; a++) {
            c[a] /= omega[a];
        }
        return c;
    }

    /** The row of the state that gives the rate of a combination of the body's coordinates, m/s. */
    double[] rate(double[] row) {
        double[] c = new double[states()];
        System.arraycopy(body.preMultiply(row), 0, c, modes, modes);
        return c;
    }

    /**
     * The equations with outputs: combinations of the body's absolute acceleration, in g.
     *
     * @param rows of six coordinates: the first three are the share of the housing's own acceleration too
     */
    public StateSpace accelerations(int acting, List<double[]> rows) {
        double[][][] fg = matrices(acting);
        double[][] c = new double[rows.size()][];
        double[][] d = new double[rows.size()][];
        for (int r = 0; r < rows.size(); r++) {
            double[] rate = rate(rows.get(r));
            double[] toG = new double[rate.length];
            for (int a = 0; a < rate.length; a++) {
                toG[a] = rate[a] / StandardGravity.M_PER_S2;
            }
            c[r] = StateSpace.rowTimes(toG, fg[0], states());
            d[r] = StateSpace.rowTimes(toG, fg[1], 4);
            for (int i = 0; i < 3; i++) {
                d[r][i] += rows.get(r)[i];
            }
        }
        return new StateSpace(fg[0], fg[1], c, d);
    }
}
