package quietband.tolerance.kernel;

import java.util.Arrays;
import java.util.Optional;
import java.util.TreeSet;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.spectrum.LogCurve;

/** Rising frequencies cut into blocks, with everything that units share at them. */
public final class BlockedGrid {

    public final double[] f;
    public final double[] x;
    public final boolean[] kink;
    public final FrequencyBlock[] blocks;

    /** For units of a design. */
    public BlockedGrid(double[] frequencies, Design design) {
        this(frequencies, new double[0], design);
    }

    /**
     * For units of a design.
     *
     * @param beside frequencies that are worked out along with the nodes near them, few and between them
     */
    public BlockedGrid(double[] frequencies, double[] beside, Design design) {
        f = frequencies.clone();
        x = new double[f.length];
        kink = new boolean[f.length];
        TreeSet<Double> corners = corners(design);
        for (int i = 0; i < f.length; i++) {
            x[i] = StrictMath.log(f[i]);
            kink[i] = corners.contains(f[i]);
        }
        int room = UnitPlatformSolver.BLOCK - beside.length;
        int count = (f.length + room - 1) / room;
        blocks = new FrequencyBlock[count];
        for (int b = 0; b < count; b++) {
            // even shares, so that no block is nearly empty
            int from = (int) ((long) f.length * b / count);
            int to = (int) ((long) f.length * (b + 1) / count);
            double first = b == 0 ? 0 : f[from];
            double end = to == f.length ? Double.POSITIVE_INFINITY : f[to];
            double[] near = Arrays.stream(beside).filter(v -> v >= first && v < end).toArray();
            double[] all = Arrays.copyOf(Arrays.copyOfRange(f, from, to), to - from + near.length);
            System.arraycopy(near, 0, all, to - from, near.length);
            blocks[b] = new FrequencyBlock(all, to - from, design);
        }
    }

    /** The same with corners on both sides of every gap wider than said in log f: what lies in it is looked at elsewhere. */
    public BlockedGrid apart(double widest) {
        for (int i = 1; i < x.length; i++) {
            if (x[i] - x[i - 1] > widest) {
                kink[i - 1] = true;
                kink[i] = true;
            }
        }
        return this;
    }

    private static TreeSet<Double> corners(Design design) {
        TreeSet<Double> corners = new TreeSet<>();
        add(corners, design.requirement().residual());
        add(corners, design.requirement().phaseNoise());
        add(corners, design.oscillator().staticPhaseNoise());
        for (Axis axis : Axis.ALL) {
            add(corners, design.vibration().drive(axis));
        }
        design.cancellation().filter(c -> c.path().sampled())
            .ifPresent(c -> corners.add(c.path().sampleRateHz() / 2));
        return corners;
    }

    private static void add(TreeSet<Double> corners, Optional<LogCurve> curve) {
        curve.ifPresent(c -> Arrays.stream(c.frequencies()).forEach(corners::add));
    }

    /**
     * Weights of an integral over f between two nodes, in Hz; zero outside. Between two nodes a cubic in log f goes through the integrand
     * times f at them and at their neighbours, a polynomial of lower degree beside a corner.
     */
    public double[] integral(double from, double to) {
        double[] w = new double[f.length];
        for (int i = 1; i < w.length; i++) {
            if (f[i - 1] >= from && f[i] <= to) {
                int first = i > 1 && !kink[i - 1] ? i - 2 : i - 1;
                int last = i < w.length - 1 && !kink[i] ? i + 1 : i;
                double half = (x[i] - x[i - 1]) / 2;
                // two points of Gauss: exact for a cubic
                for (double side : new double[] {-1 / Math.sqrt(3), 1 / Math.sqrt(3)}) {
                    double at = x[i] - half + side * half;
                    for (int k = first; k <= last; k++) {
                        w[k] += half * basis(first, last, k, at) * f[k];
                    }
                }
            }
        }
        return w;
    }

    /** The polynomial through some nodes that is 1 at one of them and 0 at the others. */
    private double basis(int first, int last, int k, double at) {
        double p = 1;
        for (int q = first; q <= last; q++) {
            p *= q == k ? 1 : (at - x[q]) / (x[k] - x[q]);
        }
        return p;
    }

    public int size() {
        return f.length;
    }
}
