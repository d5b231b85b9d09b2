package quietband.tolerance;

import java.util.List;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;

/**
 * What one unit does at a block of frequencies. With B(p)A = I + w^2 B(p) D^-1 N the residual for drive j is
 * {@code y_j = q_j + w^2 (D^-1 g)^T N_j} with {@code g = B(p_c)^T c - B(p_s)^T s} and {@code q = c - s}: one solve for all three
 * drives. c is the resonator, s the correction with the sensors' cross-axis reading. One object serves one thread.
 */
final class UnitResponse {

    /** |y_j|^2 per stack (by its ordinal) and axis, 1/g^2. */
    final double[][][] power = new double[4][3][Kernel.BLOCK];
    final UnitBody body = new UnitBody();
    final UnitPath path;
    private final Kernel kernel = new Kernel();
    private final Stack fullest;
    private final boolean inertiaVaries;
    private final double topOfAll;
    private final double[][][] gr = new double[3][6][Kernel.BLOCK];
    private final double[][][] gi = new double[3][6][Kernel.BLOCK];
    private final double[][] yr = new double[3][Kernel.BLOCK];
    private final double[][] yi = new double[3][Kernel.BLOCK];
    private List<LineFamily> families = List.of();
    private Design unit;
    private Vec crystal = Vec.ZERO;
    private Vec sensor = Vec.ZERO;
    private boolean onPlatform;

    /**
     * For units of a design.
     *
     * @param highest frequency of any block, Hz
     */
    UnitResponse(Design base, Varied varied, double highest) {
        path = new UnitPath(base, varied.sensor(), varied.support());
        fullest = Stack.fullest(base);
        inertiaVaries = varied.inertia();
        topOfAll = 2 * Math.PI * highest;
    }

    /** Takes up a unit. @throws ImpossibleUnit when its platform cannot be */
    void fill(Design made) {
        unit = made;
        path.fill(made);
        made.platform().ifPresent(p -> {
            body.fill(p, inertiaVaries);
            families = LineFamily.of(body.lines, topOfAll);
            crystal = made.oscillator().resonator().position().minus(p.centreOfGravity());
            sensor = made.cancellation().map(c -> c.sensor().position().minus(p.centreOfGravity())).orElse(Vec.ZERO);
        });
        onPlatform = made.cancellation().map(Cancellation::sensor).map(Cancellation.Sensor::onPlatform).orElse(false);
    }

    /** Fills {@link #power} of the fullest stack, or of every stack. */
    void residual(Block b, boolean everyStack) {
        path.at(b);
        boolean corrected = unit.cancellation().isPresent();
        if (everyStack || fullest == Stack.BARE) {
            bolted(b, false, Stack.BARE);
        }
        if (corrected && (everyStack || fullest == Stack.CANCELLED)) {
            bolted(b, true, Stack.CANCELLED);
        }
        if (unit.platform().isEmpty()) {
            return;
        }
        boolean shared = corrected && onPlatform;
        int sides = 0;
        int isolated = -1;
        if (everyStack || !shared) {
            load(sides, false, b.n);
            isolated = sides++;
        }
        if (shared) {
            load(sides++, true, b.n);
        }
        kernel.assemble(body, families, b);
        kernel.solve(gr, gi, sides, b.n);
        if (isolated >= 0) {
            output(isolated, b);
            add(path.cr, path.ci, 1, b.n);
            power(Stack.ISOLATED, b.n);
            if (corrected && !shared) {
                add(path.sr, path.si, -1, b.n);
                power(Stack.COMBINED, b.n);
            }
        }
        if (shared) {
            output(sides - 1, b);
            add(path.cr, path.ci, 1, b.n);
            add(path.sr, path.si, -1, b.n);
            power(Stack.COMBINED, b.n);
        }
    }

    private void bolted(Block b, boolean corrected, Stack stack) {
        for (int j = 0; j < 3; j++) {
            Lanes.copy(yr[j], yi[j], path.cr[j], path.ci[j], b.n);
        }
        if (corrected) {
            add(path.sr, path.si, -1, b.n);
        }
        power(stack, b.n);
    }

    /** g = B(p_c)^T c - B(p_s)^T s; B(p)^T v = (v, p x v). */
    private void load(int side, boolean corrected, int n) {
        for (int i = 0; i < 6; i++) {
            Lanes.fill(gr[side][i], gi[side][i], 0, 0, n);
        }
        lever(side, crystal, path.cr, path.ci, 1, n);
        if (corrected) {
            lever(side, sensor, path.sr, path.si, -1, n);
        }
    }

    private void lever(int side, Vec p, double[][] vr, double[][] vi, double sign, int n) {
        for (int i = 0; i < 3; i++) {
            Lanes.addScaled(gr[side][i], gi[side][i], sign, vr[i], vi[i], n);
            int a = (i + 1) % 3;
            int c = (i + 2) % 3;
            // (p x v)_i = p_a v_c - p_c v_a
            if (p.get(a) != 0) {
                Lanes.addScaled(gr[side][3 + i], gi[side][3 + i], sign * p.get(a), vr[c], vi[c], n);
            }
            if (p.get(c) != 0) {
                Lanes.addScaled(gr[side][3 + i], gi[side][3 + i], -sign * p.get(c), vr[a], vi[a], n);
            }
        }
    }

    /** y_j = w^2 x^T N_j. */
    private void output(int side, Block b) {
        for (int j = 0; j < 3; j++) {
            Lanes.fill(yr[j], yi[j], 0, 0, b.n);
            for (int i = 0; i < 6; i++) {
                if (kernel.carried[3 * i + j]) {
                    Lanes.addProduct(yr[j], yi[j], gr[side][i], gi[side][i], kernel.nr[3 * i + j], kernel.ni[3 * i + j], b.n);
                }
            }
            weigh(yr[j], yi[j], b.w2, b.n);
        }
    }

    private static void weigh(double[] re, double[] im, double[] weight, int n) {
        for (int t = 0; t < n; t++) {
            re[t] *= weight[t];
            im[t] *= weight[t];
        }
    }

    private void add(double[][] re, double[][] im, double sign, int n) {
        for (int j = 0; j < 3; j++) {
            Lanes.addScaled(yr[j], yi[j], sign, re[j], im[j], n);
        }
    }

    private void power(Stack stack, int n) {
        for (int j = 0; j < 3; j++) {
            Lanes.power(power[stack.ordinal()][j], yr[j], yi[j], n);
        }
    }

    /** Solves for the motion itself: afterwards {@link #coordinateRe} holds D^-1 N_j, which is minus R. */
    void motion(Block b) {
        path.at(b);
        kernel.assemble(body, families, b);
        for (int j = 0; j < 3; j++) {
            for (int i = 0; i < 6; i++) {
                if (kernel.carried[3 * i + j]) {
                    Lanes.copy(gr[j][i], gi[j][i], kernel.nr[3 * i + j], kernel.ni[3 * i + j], b.n);
                } else {
                    Lanes.fill(gr[j][i], gi[j][i], 0, 0, b.n);
                }
            }
        }
        kernel.solve(gr, gi, 3, b.n);
    }

    /** Real part of D^-1 N for a drive and coordinate, after {@link #motion}. */
    double[] coordinateRe(int drive, int coordinate) {
        return gr[drive][coordinate];
    }

    /** Imaginary part. */
    double[] coordinateIm(int drive, int coordinate) {
        return gi[drive][coordinate];
    }

    /** The sensor from the centre of gravity, m. */
    Vec sensorFromCentre() {
        return sensor;
    }

    /** Whether the sensors move with the springs. */
    boolean sensorSprung() {
        return onPlatform && unit.platform().isPresent();
    }
}
