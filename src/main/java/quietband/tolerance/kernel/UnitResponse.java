package quietband.tolerance.kernel;

import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.spectrum.Magnitudes;
import quietband.tolerance.draw.VariedParts;

/**
 * What one unit does at a block of frequencies. With B(p)A = I + w^2 B(p) D^-1 N the residual for drive j is
 * {@code y_j = q_j + w^2 (D^-1 g)^T N_j} with {@code g = B(p_c)^T c - B(p_s)^T s} and {@code q = c - s}: one solve for all three
 * drives. c is the resonator, s the cancellation with the sensors' cross-axis reading. One object serves one thread.
 */
public final class UnitResponse {

    /** |y_j|^2 per stack (by its ordinal) and axis, 1/g^2. */
    public final double[][][] power = new double[4][3][UnitPlatformSolver.BLOCK];
    public final UnitBody body = new UnitBody();
    public final UnitPath path;
    private final UnitPlatformSolver kernel = new UnitPlatformSolver();
    private final Stack fullest;
    private final boolean inertiaVaries;
    private final double[][][] gr = new double[3][6][UnitPlatformSolver.BLOCK];
    private final double[][][] gi = new double[3][6][UnitPlatformSolver.BLOCK];
    /** c - s. */
    private final double[][] qr = new double[3][UnitPlatformSolver.BLOCK];
    private final double[][] qi = new double[3][UnitPlatformSolver.BLOCK];
    private final double[] yr = new double[UnitPlatformSolver.BLOCK];
    private final double[] yi = new double[UnitPlatformSolver.BLOCK];
    private final LineFamilies families;
    private Design unit;
    private Vec crystal = Vec.ZERO;
    private Vec sensor = Vec.ZERO;
    private boolean onPlatform;

    /**
     * For units of a design.
     *
     * @param highest frequency of any block, Hz
     */
    public UnitResponse(Design base, VariedParts varied, double highest) {
        path = new UnitPath(base, varied.sensor(), varied.support());
        fullest = Stack.fullest(base);
        inertiaVaries = varied.inertia();
        families = new LineFamilies(2 * Math.PI * highest);
    }

    /** Takes up a unit. @throws ImpossibleUnitException when its platform cannot be */
    public void fill(Design made) {
        unit = made;
        path.fill(made);
        made.platform().ifPresent(p -> {
            body.fill(p, inertiaVaries);
            families.fill(body.lines);
            crystal = made.oscillator().resonator().position().minus(p.centreOfGravity());
            sensor = made.cancellation().map(c -> c.sensor().position().minus(p.centreOfGravity())).orElse(Vec.ZERO);
        });
        onPlatform = made.cancellation().map(Cancellation::sensor).map(Cancellation.Sensor::onPlatform).orElse(false);
    }

    /** Fills {@link #power} of the fullest stack, or of every stack. */
    public void residual(FrequencyBlock b, boolean everyStack) {
        boolean corrected = bolted(b, everyStack);
        if (unit.platform().isPresent()) {
            sprung(b, corrected, everyStack);
        }
    }

    /** The stacks without springs; whether there is a cancellation. */
    private boolean bolted(FrequencyBlock b, boolean everyStack) {
        path.at(b);
        boolean corrected = unit.cancellation().isPresent();
        if (corrected) {
            for (int j = 0; j < 3; j++) {
                ComplexArrays.difference(qr[j], qi[j], path.cr[j], path.ci[j], path.sr[j], path.si[j], b.lanes);
            }
        }
        if (everyStack || fullest == Stack.BARE) {
            bolted(path.cr, path.ci, Stack.BARE, b.lanes);
        }
        if (corrected && (everyStack || fullest == Stack.CANCELLED)) {
            bolted(qr, qi, Stack.CANCELLED, b.lanes);
        }
        return corrected;
    }

    private void bolted(double[][] re, double[][] im, Stack stack, int n) {
        for (int j = 0; j < 3; j++) {
            Magnitudes.squared(power[stack.ordinal()][j], re[j], im[j], n);
        }
    }

    private void sprung(FrequencyBlock b, boolean corrected, boolean everyStack) {
        boolean shared = corrected && onPlatform;
        int sides = 0;
        int isolated = -1;
        if (everyStack || !shared) {
            load(sides, b.lanes);
            isolated = sides++;
        }
        if (shared) {
            loadCorrected(sides++, b.lanes);
        }
        kernel.assemble(body, families, b);
        kernel.solve(gr, gi, sides, b.lanes);
        for (int j = 0; j < 3; j++) {
            if (isolated >= 0) {
                output(isolated, j, b.lanes);
                ComplexArrays.power(power[Stack.ISOLATED.ordinal()][j], path.cr[j], path.ci[j], b.w2, yr, yi, b.lanes);
                if (corrected && !shared) {
                    ComplexArrays.power(power[Stack.COMBINED.ordinal()][j], qr[j], qi[j], b.w2, yr, yi, b.lanes);
                }
            }
            if (shared) {
                output(sides - 1, j, b.lanes);
                ComplexArrays.power(power[Stack.COMBINED.ordinal()][j], qr[j], qi[j], b.w2, yr, yi, b.lanes);
            }
        }
    }

    /** g = B(p_c)^T c; B(p)^T v = (v, p x v). */
    private void load(int side, int n) {
        double[][] re = gr[side];
        double[][] im = gi[side];
        for (int i = 0; i < 3; i++) {
            ComplexArrays.copy(re[i], im[i], path.cr[i], path.ci[i], n);
        }
        cross(re, im, n);
    }

    /** g = B(p_c)^T c - B(p_s)^T s. */
    private void loadCorrected(int side, int n) {
        double[][] re = gr[side];
        double[][] im = gi[side];
        for (int i = 0; i < 3; i++) {
            ComplexArrays.copy(re[i], im[i], qr[i], qi[i], n);
        }
        cross(re, im, n);
        for (int i = 0; i < 3; i++) {
            int a = (i + 1) % 3;
            int c = (i + 2) % 3;
            ComplexArrays.subtractCross(re[3 + i], im[3 + i], sensor.get(a), path.sr[c], path.si[c], sensor.get(c), path.sr[a],
                path.si[a], n);
        }
    }

    /** The last three rows: (p_c x c)_i = p_a c_c - p_c c_a. */
    private void cross(double[][] re, double[][] im, int n) {
        for (int i = 0; i < 3; i++) {
            int a = (i + 1) % 3;
            int c = (i + 2) % 3;
            ComplexArrays.cross(re[3 + i], im[3 + i], crystal.get(a), path.cr[c], path.ci[c], crystal.get(c), path.cr[a], path.ci[a], n);
        }
    }

    /** y = x^T N_j of a drive. */
    private void output(int side, int j, int n) {
        boolean first = true;
        for (int i = 0; i < 6; i++) {
            if (!kernel.carried[3 * i + j]) {
                continue;
            }
            if (first) {
                ComplexArrays.product(yr, yi, gr[side][i], gi[side][i], kernel.nr[3 * i + j], kernel.ni[3 * i + j], n);
                first = false;
            } else {
                ComplexArrays.addProduct(yr, yi, gr[side][i], gi[side][i], kernel.nr[3 * i + j], kernel.ni[3 * i + j], n);
            }
        }
    }

    /** Solves for the motion itself: afterwards {@link #coordinateRe} holds D^-1 N_j, which is minus R. */
    public void motion(FrequencyBlock b) {
        path.at(b);
        kernel.assemble(body, families, b);
        for (int j = 0; j < 3; j++) {
            for (int i = 0; i < 6; i++) {
                if (kernel.carried[3 * i + j]) {
                    ComplexArrays.copy(gr[j][i], gi[j][i], kernel.nr[3 * i + j], kernel.ni[3 * i + j], b.lanes);
                } else {
                    ComplexArrays.fill(gr[j][i], gi[j][i], 0, 0, b.lanes);
                }
            }
        }
        kernel.solve(gr, gi, 3, b.lanes);
    }

    /** Real part of D^-1 N for a drive and coordinate, after {@link #motion}. */
    public double[] coordinateRe(int drive, int coordinate) {
        return gr[drive][coordinate];
    }

    /** Imaginary part. */
    public double[] coordinateIm(int drive, int coordinate) {
        return gi[drive][coordinate];
    }

    /** The sensor from the centre of gravity, m. */
    public Vec sensorFromCentre() {
        return sensor;
    }

    /** Whether the sensors move with the springs. */
    public boolean sensorSprung() {
        return onPlatform && unit.platform().isPresent();
    }
}
