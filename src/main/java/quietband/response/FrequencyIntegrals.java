package quietband.response;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import quietband.spectrum.FrequencyQuadrature;

/** Integrals over frequency of several parts in one pass, so that the platform is solved once for all of them. */
public final class FrequencyIntegrals {

    /** Writes the values at a frequency in Hz within a part's range, from an offset on. */
    public interface Integrands {

        void at(double f, double[] into, int offset);
    }

    /**
     * Some integrands over a range of their own.
     *
     * @param count  how many integrands; with none the curves are visited only
     * @param fromHz lower end of the range in Hz
     * @param toHz   upper end of the range in Hz; nothing is visited unless it is above the lower one
     * @param values the integrands
     */
    public record Part(int count, double fromHz, double toHz, Integrands values) {

        private boolean asked() {
            return toHz > fromHz;
        }
    }

    private FrequencyIntegrals() { }

    /** The integrals of each part, on the design's own grid with every end of a range as a node. */
    public static double[][] of(GridSeeds seeds, Part... parts) {
        int count = Arrays.stream(parts).mapToInt(Part::count).sum();
        double[] ends = ends(parts);
        double[] grid = ends.length > 0 ? seeds.through(ends[0], ends[ends.length - 1], ends) : ends;
        double[] all = FrequencyQuadrature.integrate(grid, count, (f, into) -> {
            int offset = 0;
            for (Part part : parts) {
                if (part.asked() && f >= part.fromHz() && f <= part.toHz()) {
                    part.values().at(f, into, offset);
                } else {
                    Arrays.fill(into, offset, offset + part.count(), 0);
                }
                offset += part.count();
            }
        });
        double[][] each = new double[parts.length][];
        int offset = 0;
        for (int p = 0; p < parts.length; p++) {
            each[p] = Arrays.copyOfRange(all, offset, offset += parts[p].count());
        }
        return each;
    }

    /** The same by trapezoids over log f, each node visited once: within 1 % on the grid of a coarse look. */
    public static double[][] trapezoids(GridSeeds seeds, Part... parts) {
        double[] ends = ends(parts);
        double[] grid = ends.length > 0 ? seeds.through(ends[0], ends[ends.length - 1], ends) : ends;
        double[][] each = new double[parts.length][];
        double[][] value = new double[parts.length][];
        for (int p = 0; p < parts.length; p++) {
            each[p] = new double[parts[p].count()];
            value[p] = new double[parts[p].count()];
        }
        for (int i = 0; i < grid.length; i++) {
            for (int p = 0; p < parts.length; p++) {
                if (parts[p].asked() && grid[i] >= parts[p].fromHz() && grid[i] <= parts[p].toHz()) {
                    parts[p].values().at(grid[i], value[p], 0);
                    double weight = weight(grid, i, parts[p]);
                    for (int k = 0; k < value[p].length; k++) {
                        each[p][k] += weight * value[p][k];
                    }
                }
            }
        }
        return each;
    }

    /** Width of a node within a part's range, Hz. */
    private static double weight(double[] f, int i, Part part) {
        double low = f[i] > part.fromHz() ? StrictMath.log(f[i] / f[i - 1]) : 0;
        double high = f[i] < part.toHz() ? StrictMath.log(f[i + 1] / f[i]) : 0;
        return f[i] * (low + high) / 2;
    }

    /** The ends of all ranges, rising. */
    private static double[] ends(Part... parts) {
        return Arrays.stream(parts).filter(Part::asked).flatMapToDouble(p -> DoubleStream.of(p.fromHz(), p.toHz())).sorted().toArray();
    }
}
