package quietband.tolerance.kernel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import quietband.model.Platform;
import quietband.model.Platform.Spring;
import quietband.platform.Assembly;
import quietband.platform.PointMotion;
import quietband.tolerance.draw.ImpossibleUnitException;

/**
 * The matrices of one unit's platform as the kernel wants them: lower triangles (length 21, row by row), the springs without
 * mass in k and loss, those with mass as lines. Filled anew for each unit; one object serves one thread.
 */
public final class UnitBody {

    /** Length of a lower triangle of order 6. */
    static final int TRIANGLE = 21;

    final double[] k = new double[TRIANGLE];
    final double[] loss = new double[TRIANGLE];
    final double[] c = new double[TRIANGLE];
    final double[] m = new double[TRIANGLE];
    final List<Relaxing> relaxing = new ArrayList<>();
    final List<Line> lines = new ArrayList<>();
    final boolean[] filled = new boolean[TRIANGLE];
    double mass;
    private final List<String> groups = new ArrayList<>();
    private final double[] all = new double[TRIANGLE];
    private final double[] work = new double[TRIANGLE];
    private final double[] scale = new double[6];

    /** Branches that share a corner (rad/s). */
    record Relaxing(double corner, double[] stiffness) { }

    /** A principal axis of a spring with mass: its row of Q^T B, k, loss factor, mass, and the number of its group and axis. */
    record Line(double[] row, double stiffness, double loss, double mass, int family) { }

    /** Place of an element, i >= j, in a lower triangle. */
    static int at(int i, int j) {
        return i * (i + 1) / 2 + j;
    }

    /**
     * Fills in a platform.
     *
     * @throws ImpossibleUnitException when its inertia belongs to no body or its springs leave a direction free
     */
    public void fill(Platform platform, boolean inertiaVaries) {
        for (double[] a : new double[][] {k, loss, c, m, all}) {
            Arrays.fill(a, 0);
        }
        relaxing.clear();
        lines.clear();
        groups.clear();
        inertia(platform, inertiaVaries);
        for (Spring s : platform.springs()) {
            add(platform, s);
        }
        if (free()) {
            throw new ImpossibleUnitException();
        }
        if (platform.modalDamping() != 0) {
            double[] full = new Assembly(platform).damping();
            for (int i = 0; i < 6; i++) {
                for (int j = 0; j <= i; j++) {
                    c[at(i, j)] = full[6 * i + j];
                }
            }
        }
        for (int e = 0; e < TRIANGLE; e++) {
            filled[e] = all[e] != 0 || loss[e] != 0 || c[e] != 0 || m[e] != 0;
        }
    }

    private void inertia(Platform platform, boolean varies) {
        Platform.Inertia j = platform.inertia();
        mass = platform.mass();
        m[at(0, 0)] = mass;
        m[at(1, 1)] = mass;
        m[at(2, 2)] = mass;
        m[at(3, 3)] = j.xx();
        m[at(4, 4)] = j.yy();
        m[at(5, 5)] = j.zz();
        m[at(4, 3)] = -j.xy();
        m[at(5, 3)] = -j.xz();
        m[at(5, 4)] = -j.yz();
        if (varies) {
            double[] p = new EigenDecompositionSymmetric(new Array2DRowRealMatrix(new double[][] {{j.xx(), -j.xy(), -j.xz()},
                {-j.xy(), j.yy(), -j.yz()}, {-j.xz(), -j.yz(), j.zz()}}, false)).getEigenvalues();
            Arrays.sort(p);
            if (!(p[0] > 0) || p[2] > (p[0] + p[1]) * (1 + 1e-9)) {
                throw new ImpossibleUnitException();
            }
        }
    }

    private void add(Platform platform, Spring s) {
        double[] b = PointMotion.turned(s.at().minus(platform.centreOfGravity()), s.orientation());
        int family = 3 * group(s.group());
        for (int i = 0; i < 3; i++) {
            double stiffness = s.stiffness().get(i);
            double eta = s.lossFactor().get(i);
            rank1(all, b, i, stiffness);
            rank1(c, b, i, s.damping().get(i));
            if (s.mass() > 0 && stiffness > 0) {
                lines.add(new Line(Arrays.copyOfRange(b, 6 * i, 6 * i + 6), stiffness, eta, s.mass(), family + i));
            } else {
                rank1(k, b, i, stiffness);
                rank1(loss, b, i, stiffness * eta);
            }
            double branch = s.relaxationRatio().get(i) * stiffness;
            double cornerHz = s.relaxationCornerHz().get(i);
            if (branch > 0 && Double.isFinite(cornerHz)) {
                rank1(branches(2 * Math.PI * cornerHz), b, i, branch);
            }
        }
    }

    private int group(String name) {
        int known = groups.indexOf(name);
        if (known >= 0) {
            return known;
        }
        groups.add(name);
        return groups.size() - 1;
    }

    private double[] branches(double corner) {
        for (Relaxing r : relaxing) {
            if (r.corner() == corner) {
                return r.stiffness();
            }
        }
        relaxing.add(new Relaxing(corner, new double[TRIANGLE]));
        return relaxing.get(relaxing.size() - 1).stiffness();
    }

    private static void rank1(double[] triangle, double[] rows, int r, double value) {
        if (value == 0) {
            return;
        }
        for (int i = 0; i < 6; i++) {
            double left = value * rows[6 * r + i];
            if (left != 0) {
                for (int j = 0; j <= i; j++) {
                    triangle[at(i, j)] += left * rows[6 * r + j];
                }
            }
        }
    }

    /** Whether the static stiffness holds some direction no better than 1e-12 of the stiffest, by its Cholesky pivots. */
    private boolean free() {
        double top = 0;
        for (int i = 0; i < 6; i++) {
            scale[i] = 1 / Math.sqrt(m[at(i, i)]);
            for (int j = 0; j <= i; j++) {
                work[at(i, j)] = all[at(i, j)] * scale[i] * scale[j];
            }
            top = Math.max(top, work[at(i, i)]);
        }
        for (int p = 0; p < 6; p++) {
            double pivot = work[at(p, p)];
            if (!(pivot > 1e-12 * top)) {
                return true;
            }
            for (int i = p + 1; i < 6; i++) {
                double f = work[at(i, p)] / pivot;
                for (int j = p + 1; j <= i; j++) {
                    work[at(i, j)] -= f * work[at(j, p)];
                }
            }
        }
        return false;
    }

    /** The static stiffness of all springs, lower triangle; not copied. */
    double[] staticStiffness() {
        return all;
    }
}
