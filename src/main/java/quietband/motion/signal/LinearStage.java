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
        direct = s.d();
        slopeOfInput = s.slopesOfInput(h);
        phi = split == null ? hold.phi() : product(product(split.fromStates(), hold.phi()), split.toStates());
        input = split == null ? hold.input() : product(split.fromStates(), hold.input());
        c = split == null ? s.c() : product(s.c(), split.toStates());
        slope = split == null ? s.slopes(h) : product(s.slopes(h), split.toStates());
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

    private static double[][] product(double[][] a, double[][] b) {
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
                force(i, in, used, trackA, steps);
                force(i + 1, in, used, trackB, steps);
                pair(i, steps);
                spread(i + 1, trackB, out, watch, seen, steps);
            } else {
                force(i, in, used, trackA, steps);
                single(i, steps);
            }
            spread(i, trackA, out, watch, seen, steps);
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

    /** What the inputs add to a state in each step, at the index of the step's end. */
    private void force(int i, BlockSignal[] in, boolean[] used, double[] track, int steps) {
        Arrays.fill(track, 1, steps + 1, 0);
        for (int j = 0; j < inputs; j++) {
            if (used[j]) {
                add(input[i], 4 * j, in[j].value, in[j].slope, track, steps);
            }
        }
    }

    private static void add(double[] g, int at, double[] u, double[] d, double[] track, int steps) {
        double g0 = g[at];
        double g1 = g[at + 1];
        double g2 = g[at + 2];
        double g3 = g[at + 3];
        for (int k = 0; k < steps; k++) {
            track[k + 1] += g0 * u[k] + g1 * d[k] + g2 * u[k + 1] + g3 * d[k + 1];
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
            double next = p00 * a + p01 * b + trackA[k + 1];
            b = p10 * a + p11 * b + trackB[k + 1];
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
            a = p * a + trackA[k + 1];
            trackA[k + 1] = a;
        }
        x[i] = a;
    }

    private void spread(int i, double[] track, BlockSignal[] out, double[][] watch, double[][] seen, int steps) {
        for (int p = 0; p < c.length; p++) {
            add(c[p][i], track, out[p].value, steps);
            add(slope[p][i], track, out[p].slope, steps);
        }
        for (int w = 0; w < watch.length; w++) {
            add(watch[w][i], track, seen[w], steps);
        }
    }

    private static void add(double share, double[] track, double[] into, int steps) {
        for (int k = 0; k <= steps; k++) {
            into[k] += share * track[k];
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

    private static double[] times(double[][] a, double[] v) {
        return Arrays.stream(a).mapToDouble(row -> dot(row, v)).toArray();
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
