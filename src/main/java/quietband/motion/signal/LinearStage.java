package quietband.motion.signal;

import java.util.Arrays;
import java.util.Optional;

/**
 * A linear system with several inputs and outputs that takes exact steps. Where the system comes apart into pairs of states each pair
 * runs through a whole block on its own; else all states step together.
 */
public final class LinearStage {

    private static final long PAYS = 40;

    private final int n;
    private final int inputs;
    private final BlockDiagonal split;
    private final double[][] phi;
    private final double[][] input;
    private final double[][] c;
    private final double[][] slope;
    private final double[][] direct;
    private final double[][] slopeOfInput;
    private final double[] x;
    private final double[] forceA = new double[BlockSignal.BLOCK];
    private final double[] forceB = new double[BlockSignal.BLOCK];
    private final double[] trackA = new double[BlockSignal.BLOCK + 1];
    private final double[] trackB = new double[BlockSignal.BLOCK + 1];
    private double[] settledRe = new double[0];
    private double[] settledIm = new double[0];

    /**
     * For a system and a step in s.
     *
     * @param inputs only the first so many inputs are used
     * @param steps  about how many will be taken: for few of them it does not pay to take the system apart
     */
    public LinearStage(StateSpace s, int inputs, double h, long steps) {
        n = s.states();
        this.inputs = inputs;
        HermiteHold hold = HermiteHold.of(s.f(), s.g(), h);
        Optional<BlockDiagonal> blocks = steps > PAYS * (long) n ? BlockDiagonal.of(s.f()) : Optional.empty();
        split = blocks.orElse(null);
        double[][] joined = new double[n][4 * inputs];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < inputs; j++) {
                joined[i][4 * j] = hold.start()[i][j];
                joined[i][4 * j + 1] = hold.startSlope()[i][j];
                joined[i][4 * j + 2] = hold.end()[i][j];
                joined[i][4 * j + 3] = hold.endSlope()[i][j];
            }
        }
        double[][] cf = new double[s.outputs()][];
        slopeOfInput = new double[s.outputs()][];
        for (int p = 0; p < s.outputs(); p++) {
            cf[p] = scaled(StateSpace.rowTimes(s.c()[p], s.f(), n), h);
            slopeOfInput[p] = scaled(StateSpace.rowTimes(s.c()[p], s.g(), s.inputs()), h);
        }
        direct = s.d();
        phi = split == null ? hold.phi() : product(product(split.fromStates(), hold.phi()), split.toStates());
        input = split == null ? joined : product(split.fromStates(), joined);
        c = split == null ? s.c() : product(s.c(), split.toStates());
        slope = split == null ? cf : product(cf, split.toStates());
        x = new double[n];
    }

    /** The same system, sharing its matrices, at rest. */
    public LinearStage(LinearStage same) {
        n = same.n;
        inputs = same.inputs;
        split = same.split;
        phi = same.phi;
        input = same.input;
        c = same.c;
        slope = same.slope;
        direct = same.direct;
        slopeOfInput = same.slopeOfInput;
        x = new double[n];
    }

    private static double[] scaled(double[] row, double by) {
        for (int i = 0; i < row.length; i++) {
            row[i] *= by;
        }
        return row;
    }

    public static double[][] product(double[][] a, double[][] b) {
        double[][] ab = new double[a.length][];
        for (int i = 0; i < a.length; i++) {
            ab[i] = StateSpace.rowTimes(a[i], b, b.length == 0 ? 0 : b[0].length);
        }
        return ab;
    }

    /** Whether the states come apart into pairs. */
    public boolean splits() {
        return split != null;
    }

    /** A row of the original state as one of the coordinates used here. */
    public double[] inside(double[] row) {
        return split == null ? row : StateSpace.rowTimes(row, split.toStates(), n);
    }

    /** The original state; a copy. */
    public double[] state() {
        return split == null ? x.clone() : times(split.toStates(), x);
    }

    /** Sets the original state. */
    public void state(double[] state) {
        double[] mine = split == null ? state : times(split.fromStates(), state);
        System.arraycopy(mine, 0, x, 0, n);
    }

    private static double[] times(double[][] a, double[] v) {
        double[] product = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < v.length; j++) {
                product[i] += a[i][j] * v[j];
            }
        }
        return product;
    }

    /**
     * Steps through a block of n steps.
     *
     * @param in    the inputs
     * @param used  which of them are not zero throughout
     * @param out   written from point 0 to n
     * @param watch rows of {@link #inside} whose values are written to {@code seen}; may be empty
     * @param seen  one array per row, written from point 0 to n
     */
    public void run(BlockSignal[] in, boolean[] used, BlockSignal[] out, double[][] watch, double[][] seen, int steps) {
        for (int p = 0; p < c.length; p++) {
            through(in, used, p, out[p], steps);
        }
        for (double[] s : seen) {
            Arrays.fill(s, 0, steps + 1, 0);
        }
        if (split == null) {
            dense(in, used, out, watch, seen, steps);
            return;
        }
        for (int i = 0; i < n; i += split.paired()[i] ? 2 : 1) {
            if (split.paired()[i]) {
                forcePair(i, in, used, steps);
                pair(i, steps);
                spreadPair(i, out, watch, seen, steps);
            } else {
                force(i, in, used, forceA, steps);
                single(i, steps);
                spread(i, trackA, out, watch, seen, steps);
            }
        }
    }

    private void through(BlockSignal[] in, boolean[] used, int p, BlockSignal out, int steps) {
        Arrays.fill(out.value, 0, steps + 1, 0);
        Arrays.fill(out.slope, 0, steps + 1, 0);
        for (int j = 0; j < inputs; j++) {
            double d = direct[p][j];
            double s = slopeOfInput[p][j];
            if (used[j] && (d != 0 || s != 0)) {
                double[] u = in[j].value;
                double[] du = in[j].slope;
                for (int k = 0; k <= steps; k++) {
                    out.value[k] += d * u[k];
                    out.slope[k] += s * u[k] + d * du[k];
                }
            }
        }
    }

    private void force(int i, BlockSignal[] in, boolean[] used, double[] force, int steps) {
        Arrays.fill(force, 0, steps, 0);
        for (int j = 0; j < inputs; j++) {
            if (used[j]) {
                add(input[i], 4 * j, in[j].value, in[j].slope, force, steps);
            }
        }
    }

    private void forcePair(int i, BlockSignal[] in, boolean[] used, int steps) {
        Arrays.fill(forceA, 0, steps, 0);
        Arrays.fill(forceB, 0, steps, 0);
        for (int j = 0; j < inputs; j++) {
            if (used[j]) {
                addPair(input[i], input[i + 1], 4 * j, in[j], steps);
            }
        }
    }

    private void addPair(double[] g, double[] p, int at, BlockSignal in, int steps) {
        double[] u = in.value;
        double[] d = in.slope;
        double[] a = forceA;
        double[] b = forceB;
        double g0 = g[at];
        double g1 = g[at + 1];
        double g2 = g[at + 2];
        double g3 = g[at + 3];
        double p0 = p[at];
        double p1 = p[at + 1];
        double p2 = p[at + 2];
        double p3 = p[at + 3];
        for (int k = 0; k < steps; k++) {
            double u0 = u[k];
            double d0 = d[k];
            double u1 = u[k + 1];
            double d1 = d[k + 1];
            a[k] += g0 * u0 + g1 * d0 + g2 * u1 + g3 * d1;
            b[k] += p0 * u0 + p1 * d0 + p2 * u1 + p3 * d1;
        }
    }

    private static void add(double[] g, int at, double[] u, double[] d, double[] force, int steps) {
        double g0 = g[at];
        double g1 = g[at + 1];
        double g2 = g[at + 2];
        double g3 = g[at + 3];
        for (int k = 0; k < steps; k++) {
            force[k] += g0 * u[k] + g1 * d[k] + g2 * u[k + 1] + g3 * d[k + 1];
        }
    }

    private void pair(int i, int steps) {
        double p00 = phi[i][i];
        double p01 = phi[i][i + 1];
        double p10 = phi[i + 1][i];
        double p11 = phi[i + 1][i + 1];
        double a = x[i];
        double b = x[i + 1];
        trackA[0] = a;
        trackB[0] = b;
        for (int k = 0; k < steps; k++) {
            double next = p00 * a + p01 * b + forceA[k];
            b = p10 * a + p11 * b + forceB[k];
            a = next;
            trackA[k + 1] = a;
            trackB[k + 1] = b;
        }
        x[i] = a;
        x[i + 1] = b;
    }

    private void single(int i, int steps) {
        double p = phi[i][i];
        double a = x[i];
        trackA[0] = a;
        for (int k = 0; k < steps; k++) {
            a = p * a + forceA[k];
            trackA[k + 1] = a;
        }
        x[i] = a;
    }

    private void spreadPair(int i, BlockSignal[] out, double[][] watch, double[][] seen, int steps) {
        for (int p = 0; p < c.length; p++) {
            addPair(c[p][i], c[p][i + 1], out[p].value, steps);
            addPair(slope[p][i], slope[p][i + 1], out[p].slope, steps);
        }
        for (int w = 0; w < watch.length; w++) {
            addPair(watch[w][i], watch[w][i + 1], seen[w], steps);
        }
    }

    private void addPair(double a, double b, double[] into, int steps) {
        double[] s = trackA;
        double[] t = trackB;
        for (int k = 0; k <= steps; k++) {
            into[k] += a * s[k] + b * t[k];
        }
    }

    private void spread(int i, double[] track, BlockSignal[] out, double[][] watch, double[][] seen, int steps) {
        for (int p = 0; p < c.length; p++) {
            double v = c[p][i];
            double s = slope[p][i];
            double[] value = out[p].value;
            double[] slopes = out[p].slope;
            for (int k = 0; k <= steps; k++) {
                value[k] += v * track[k];
                slopes[k] += s * track[k];
            }
        }
        for (int w = 0; w < watch.length; w++) {
            double v = watch[w][i];
            double[] value = seen[w];
            for (int k = 0; k <= steps; k++) {
                value[k] += v * track[k];
            }
        }
    }

    private void dense(BlockSignal[] in, boolean[] used, BlockSignal[] out, double[][] watch, double[][] seen, int steps) {
        double[] next = new double[n];
        for (int k = 0;; k++) {
            for (int p = 0; p < c.length; p++) {
                out[p].value[k] += dot(c[p], x);
                out[p].slope[k] += dot(slope[p], x);
            }
            for (int w = 0; w < watch.length; w++) {
                seen[w][k] += dot(watch[w], x);
            }
            if (k == steps) {
                return;
            }
            for (int i = 0; i < n; i++) {
                double sum = dot(phi[i], x);
                for (int j = 0; j < inputs; j++) {
                    if (used[j]) {
                        sum += input[i][4 * j] * in[j].value[k] + input[i][4 * j + 1] * in[j].slope[k]
                            + input[i][4 * j + 2] * in[j].value[k + 1] + input[i][4 * j + 3] * in[j].slope[k + 1];
                    }
                }
                next[i] = sum;
            }
            System.arraycopy(next, 0, x, 0, n);
        }
    }

    public static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < b.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /** Peak of a row of {@link #inside} in the periodic state of the last {@link #settle}. */
    public double amplitude(double[] row) {
        return Math.hypot(dot(row, settledRe), dot(row, settledIm));
    }

    /** Starts in the periodic state under sinusoids, one per input, and tells the outputs'. */
    public GridSinusoid[] settle(GridSinusoid[] in, double theta) {
        double cos = Math.cos(theta);
        double sin = Math.sin(theta);
        double[] re = new double[n];
        double[] im = new double[n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < inputs; j++) {
                GridSinusoid p = in[j];
                double[] g = input[i];
                re[i] += g[4 * j] * p.re() + g[4 * j + 1] * p.slopeRe() + g[4 * j + 2] * (p.re() * cos - p.im() * sin)
                    + g[4 * j + 3] * (p.slopeRe() * cos - p.slopeIm() * sin);
                im[i] += g[4 * j] * p.im() + g[4 * j + 1] * p.slopeIm() + g[4 * j + 2] * (p.im() * cos + p.re() * sin)
                    + g[4 * j + 3] * (p.slopeIm() * cos + p.slopeRe() * sin);
            }
        }
        if (n > 0) {
            SteadyState.solve(phi, theta, re, im);
        }
        System.arraycopy(re, 0, x, 0, n);
        settledRe = re;
        settledIm = im;
        GridSinusoid[] out = new GridSinusoid[c.length];
        for (int p = 0; p < c.length; p++) {
            GridSinusoid sum = new GridSinusoid(dot(c[p], re), dot(c[p], im), dot(slope[p], re), dot(slope[p], im));
            for (int j = 0; j < inputs; j++) {
                sum = sum.plus(new GridSinusoid(direct[p][j] * in[j].re(), direct[p][j] * in[j].im(),
                    slopeOfInput[p][j] * in[j].re() + direct[p][j] * in[j].slopeRe(),
                    slopeOfInput[p][j] * in[j].im() + direct[p][j] * in[j].slopeIm()));
            }
            out[p] = sum;
        }
        return out;
    }
}
