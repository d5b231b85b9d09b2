package quietband.filter.goal;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import quietband.numerics.ConeProgram;
import quietband.numerics.SecondOrderCone;
import quietband.spectrum.LogGrid;

/**
 * |F_i| <= bound from 0 Hz to half the sample rate: cones at some frequencies, to which those are added where a
 * solution went beyond.
 */
public final class GainBound {

    private static final double BEYOND = 2e-4;
    private static final int FINE = 12;
    private static final int AROUND = 8;

    private final FilterUnknowns unknowns;
    private final double bound;
    private final double[] dense;
    private final double[][][] response;
    private final List<TreeSet<Double>> points = new ArrayList<>();

    /**
     * For filters at a sample rate in Hz.
     *
     * @param low     lowest frequency of interest, Hz
     * @param maximum largest gain, above 0
     * @param seeds   where peaks may stand, Hz: corners of poles; empty for taps, which have none
     */
    public GainBound(FilterUnknowns unknowns, double sampleRateHz, double low, double maximum, double[] seeds) {
        this.unknowns = unknowns;
        // solutions may pass by BEYOND between the points
        this.bound = maximum / (1 + BEYOND);
        int size = Math.max(8, unknowns.basis(0).size());
        double half = sampleRateHz / 2;
        this.dense = dense(size, half, low, seeds);
        this.response = new double[3][][];
        for (int i = 0; i < 3; i++) {
            FilterBasis basis = unknowns.basis(i);
            response[i] = i > 0 && basis == unknowns.basis(i - 1) ? response[i - 1] : responses(basis, dense);
            TreeSet<Double> start = new TreeSet<>();
            int count = size + 2;
            for (int n = 0; n <= count; n++) {
                start.add(half * n / count);
            }
            for (double f : seeds) {
                start.add(f);
            }
            points.add(start);
        }
    }

    private static double[] dense(int size, double half, double low, double[] seeds) {
        TreeSet<Double> f = new TreeSet<>();
        int count = FINE * size;
        for (int n = 0; n <= count; n++) {
            f.add(half * n / count);
        }
        if (low < half / count) {
            for (double v : LogGrid.between(48, low / 100, half / count)) {
                f.add(v);
            }
        }
        for (double seed : seeds) {
            for (int n = -AROUND; n <= AROUND; n++) {
                f.add(Math.min(half, seed * Math.pow(2, (double) n / AROUND)));
            }
        }
        return f.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static double[][] responses(FilterBasis basis, double[] f) {
        double[][] rows = new double[2 * f.length][basis.size()];
        for (int n = 0; n < f.length; n++) {
            basis.at(f[n], rows[2 * n], rows[2 * n + 1]);
        }
        return rows;
    }

    /** Adds the cones of all points so far. */
    public void addTo(ConeProgram program) {
        for (int axis = 0; axis < 3; axis++) {
            FilterBasis basis = unknowns.basis(axis);
            int[] index = new int[basis.size()];
            for (int k = 0; k < index.length; k++) {
                index[k] = unknowns.from(axis) + k;
            }
            for (double f : points.get(axis)) {
                double[][] g = new double[3][basis.size()];
                basis.at(f, g[1], g[2]);
                for (int k = 0; k < index.length; k++) {
                    g[1][k] /= bound;
                    g[2][k] /= bound;
                }
                program.add(new SecondOrderCone(index, g, new double[] {1, 0, 0}));
            }
        }
    }

    /** Adds the points where a solution passes the bound; false when it does nowhere. */
    public boolean refine(double[] x) {
        boolean beyond = false;
        for (int axis = 0; axis < 3; axis++) {
            double[] gain = gains(axis, unknowns.of(axis, x));
            for (int n = 0; n < dense.length; n++) {
                boolean local = (n == 0 || gain[n] >= gain[n - 1]) && (n == dense.length - 1 || gain[n] >= gain[n + 1]);
                if (local) {
                    double[] top = vertex(gain, n);
                    if (top[1] > bound * (1 + BEYOND / 2)) {
                        beyond |= points.get(axis).add(top[0]);
                    }
                }
            }
        }
        return beyond;
    }

    /** Where and how high the parabola through a local maximum and its neighbours is. */
    private double[] vertex(double[] gain, int n) {
        double[] own = {dense[n], gain[n]};
        if (n == 0 || n == dense.length - 1) {
            return own;
        }
        double a = dense[n - 1] - dense[n];
        double b = dense[n + 1] - dense[n];
        double ga = gain[n - 1] - gain[n];
        double gb = gain[n + 1] - gain[n];
        // gain = own + p u + q u^2
        double q = (ga / a - gb / b) / (a - b);
        double p = ga / a - q * a;
        double u = -p / (2 * q);
        return q < 0 && u > a && u < b ? new double[] {dense[n] + u, gain[n] + u * p / 2} : own;
    }

    private double[] gains(int axis, double[] g) {
        double[] gain = new double[dense.length];
        for (int n = 0; n < gain.length; n++) {
            double re = 0;
            double im = 0;
            double[] rows = response[axis][2 * n];
            double[] rowsIm = response[axis][2 * n + 1];
            for (int k = 0; k < g.length; k++) {
                re += rows[k] * g[k];
                im += rowsIm[k] * g[k];
            }
            gain[n] = Math.sqrt(re * re + im * im);
        }
        return gain;
    }

    /** Whether a solution keeps the bound, apart from what lies between the dense points. */
    public boolean kept(double[] x) {
        return kept(x, 0);
    }

    /** The same with some room left, as a share of the bound. */
    public boolean kept(double[] x, double room) {
        for (int axis = 0; axis < 3; axis++) {
            for (double gain : gains(axis, unknowns.of(axis, x))) {
                if (gain > bound * (1 - room)) {
                    return false;
                }
            }
        }
        return true;
    }
}
