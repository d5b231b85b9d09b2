package quietband.response.limits;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.platform.Assembly;
import quietband.response.DesignGrid;
import quietband.spectrum.LogCurve;

/**
 * One-sided density of v^2 - mean for Gaussian v of one-sided density S: the integral over all u from minus to plus infinity of
 * S(|u|) S(|f - u|) du; its own integral is 2 sigma^4.
 */
final class CurvatureNoise {

    private final double[] f;
    private final double[] density;

    /** @param density S of v at f in Hz; sampled on the design's own grid over its random profiles */
    CurvatureNoise(Design design, Assembly assembly, DoubleUnaryOperator density) {
        double from = Double.POSITIVE_INFINITY;
        double to = 0;
        for (Axis axis : Axis.ALL) {
            Optional<double[]> ends = design.vibration().drive(axis).map(LogCurve::frequencies);
            if (ends.isPresent()) {
                from = Math.min(from, ends.get()[0]);
                to = Math.max(to, ends.get()[ends.get().length - 1]);
            }
        }
        f = to > from ? DesignGrid.of(design, assembly, from, to) : new double[0];
        this.density = Arrays.stream(f).map(density).toArray();
    }

    /** From points, linear between them and zero outside. */
    CurvatureNoise(double[] f, double[] density) {
        this.f = f.clone();
        this.density = density.clone();
    }

    private double density(double u) {
        double a = Math.abs(u);
        if (f.length == 0 || a < f[0] || a > f[f.length - 1]) {
            return 0;
        }
        int found = Arrays.binarySearch(f, a);
        if (found >= 0) {
            return density[found];
        }
        int hi = -found - 1;
        double t = (a - f[hi - 1]) / (f[hi] - f[hi - 1]);
        return density[hi - 1] + t * (density[hi] - density[hi - 1]);
    }

    /** At an offset in Hz, in the square of v's unit squared per Hz; both factors are linear between the nodes. */
    double at(double offset) {
        int n = f.length;
        double[] nodes = new double[4 * n];
        for (int i = 0; i < n; i++) {
            nodes[4 * i] = f[i];
            nodes[4 * i + 1] = -f[i];
            nodes[4 * i + 2] = offset - f[i];
            nodes[4 * i + 3] = offset + f[i];
        }
        Arrays.sort(nodes);
        double sum = 0;
        for (int i = 1; i < nodes.length; i++) {
            double width = nodes[i] - nodes[i - 1];
            if (width > 0) {
                // two-point Gauss: exact for the product of two straight lines, and never on an edge
                double middle = (nodes[i] + nodes[i - 1]) / 2;
                double half = width / (2 * Math.sqrt(3));
                sum += width / 2 * (product(middle - half, offset) + product(middle + half, offset));
            }
        }
        return sum;
    }

    private double product(double u, double offset) {
        double first = density(u);
        return first == 0 ? 0 : first * density(offset - u);
    }
}
