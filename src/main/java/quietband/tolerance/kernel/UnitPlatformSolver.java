package quietband.tolerance.kernel;

import java.util.Arrays;

/**
 * The platform's equations of one unit on a block of frequencies: D is complex symmetric and factored as L Delta L^T without
 * pivoting (its imaginary part is that of damping, so no pivot vanishes), elements that are zero for every frequency are left out.
 * A few right-hand sides are carried along. One object serves one thread.
 */
public final class UnitPlatformSolver {

    /** Most frequencies in a block: the matrices of so many stay in the fastest memory. */
    public static final int BLOCK = 100;

    private final double[][] zr = new double[UnitBody.TRIANGLE][BLOCK];
    private final double[][] zi = new double[UnitBody.TRIANGLE][BLOCK];
    private final double[][] dr = new double[6][BLOCK];
    private final double[][] di = new double[6][BLOCK];
    private final double[] lr = new double[BLOCK];
    private final double[] li = new double[BLOCK];
    private final boolean[] filled = new boolean[UnitBody.TRIANGLE];
    private final int[] starts = new int[LineFamily.ORDERS];
    private final LineFunctions f = new LineFunctions(LineFamily.ORDERS, BLOCK);
    /** N, 6 x 3 row by row, and which of its elements are not zero. */
    final double[][] nr = new double[18][BLOCK];
    final double[][] ni = new double[18][BLOCK];
    final boolean[] carried = new boolean[18];

    /** Builds D and N of a unit on a block. */
    void assemble(UnitBody body, LineFamilies families, FrequencyBlock b) {
        int n = b.lanes;
        System.arraycopy(body.filled, 0, filled, 0, filled.length);
        for (int e = 0; e < filled.length; e++) {
            if (filled[e]) {
                plain(zr[e], zi[e], b.w, b.w2, body.k[e], body.loss[e], body.c[e], body.m[e], n);
            }
        }
        for (UnitBody.Relaxing r : body.relaxing) {
            relaxing(lr, li, r.corner(), b);
            for (int e = 0; e < filled.length; e++) {
                if (r.stiffness()[e] != 0) {
                    ComplexArrays.addScaled(zr[e], zi[e], r.stiffness()[e], lr, li, n);
                }
            }
        }
        Arrays.fill(carried, false);
        for (int i = 0; i < 3; i++) {
            carried[4 * i] = true;
            ComplexArrays.fill(nr[4 * i], ni[4 * i], body.mass, 0, n);
        }
        for (int f = 0; f < families.count(); f++) {
            lines(families.get(f), b);
        }
    }

    private static void plain(double[] re, double[] im, double[] w, double[] w2, double k, double loss, double c, double m,
                              int n) {
        for (int t = 0; t < n; t++) {
            re[t] = k - w2[t] * m;
            im[t] = loss + w[t] * c;
        }
    }

    /** j w/(j w + corner). */
    private static void relaxing(double[] re, double[] im, double corner, FrequencyBlock b) {
        for (int t = 0; t < b.lanes; t++) {
            double s = 1 / (b.w2[t] + corner * corner);
            re[t] = b.w2[t] * s;
            im[t] = b.w[t] * corner * s;
        }
    }

    private void lines(LineFamily family, FrequencyBlock b) {
        int orders = family.orders(b.top);
        f.at(family, b.w2, b.top, orders, b.lanes);
        family.starts(starts, orders, b);
        for (int e = 0; e < filled.length; e++) {
            if (family.stiff[e]) {
                ComplexArrays.addSeries(zr[e], zi[e], family.kRe[e], family.kIm[e], f.phiRe, f.phiIm, starts, orders, b.lanes);
            }
        }
        for (int e = 0; e < carried.length; e++) {
            if (family.heavy[e]) {
                if (!carried[e]) {
                    ComplexArrays.fill(nr[e], ni[e], 0, 0, b.lanes);
                    carried[e] = true;
                }
                ComplexArrays.addSeries(nr[e], ni[e], family.mRe[e], family.mIm[e], f.chiRe, f.chiIm, starts, orders, b.lanes);
            }
        }
    }

    /**
     * Solves D x = g for several right-hand sides; D is destroyed.
     *
     * @param gr real parts, right-hand side by right-hand side, six arrays each; become x
     * @param gi imaginary parts
     */
    void solve(double[][][] gr, double[][][] gi, int sides, int n) {
        for (int j = 0; j < 6; j++) {
            int jj = UnitBody.at(j, j);
            ComplexArrays.reciprocal(dr[j], di[j], zr[jj], zi[jj], n);
            for (int i = j + 1; i < 6; i++) {
                int ij = UnitBody.at(i, j);
                if (!filled[ij]) {
                    continue;
                }
                ComplexArrays.product(lr, li, zr[ij], zi[ij], dr[j], di[j], n);
                for (int q = j + 1; q <= i; q++) {
                    eliminate(UnitBody.at(i, q), UnitBody.at(q, j), n);
                }
                for (int s = 0; s < sides; s++) {
                    ComplexArrays.subtractProduct(gr[s][i], gi[s][i], lr, li, gr[s][j], gi[s][j], n);
                }
            }
        }
        for (int s = 0; s < sides; s++) {
            substitute(gr[s], gi[s], n);
        }
    }

    private void eliminate(int target, int source, int n) {
        if (!filled[source]) {
            return;
        }
        if (!filled[target]) {
            ComplexArrays.fill(zr[target], zi[target], 0, 0, n);
            filled[target] = true;
        }
        ComplexArrays.subtractProduct(zr[target], zi[target], lr, li, zr[source], zi[source], n);
    }

    private void substitute(double[][] gr, double[][] gi, int n) {
        for (int j = 5; j >= 0; j--) {
            for (int i = j + 1; i < 6; i++) {
                int ij = UnitBody.at(i, j);
                if (filled[ij]) {
                    ComplexArrays.subtractProduct(gr[j], gi[j], zr[ij], zi[ij], gr[i], gi[i], n);
                }
            }
            ComplexArrays.product(gr[j], gi[j], gr[j], gi[j], dr[j], di[j], n);
        }
    }
}
