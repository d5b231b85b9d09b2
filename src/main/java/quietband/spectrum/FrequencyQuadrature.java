package quietband.spectrum;

/** Integrals over frequency of several functions at once, interval by interval of a grid that already resolves them. */
public final class FrequencyQuadrature {

    /** Adds to each of several integrands' values at one frequency. */
    @FunctionalInterface
    public interface Integrands {
        /** Writes the values at a frequency in Hz into the array (length as given to {@code integrate}). */
        void at(double f, double[] into);
    }

    // Gauss-Legendre with three nodes on [-1, 1], 0 and +-sqrt(3/5): exact up to the fifth power. Eight intervals in a
    // half-power width put a resonance's pole four intervals away, where the error is some 1e-7 of the interval's share.
    private static final double[] NODE = {-Math.sqrt(0.6), 0, Math.sqrt(0.6)};
    private static final double[] WEIGHT = {5.0 / 9, 8.0 / 9, 5.0 / 9};

    private FrequencyQuadrature() { }

    /**
     * Integrals from the first to the last node of the grid, by three-point Gauss-Legendre in log f in every interval.
     * A jump of an integrand must be a node.
     *
     * @param grid  rising, in Hz
     * @param count how many integrands
     * @return the integrals, length {@code count}
     */
    public static double[] integrate(double[] grid, int count, Integrands integrands) {
        double[] sum = new double[count];
        double[] value = new double[count];
        for (int i = 1; i < grid.length; i++) {
            double half = StrictMath.log(grid[i] / grid[i - 1]) / 2;
            double middle = Math.sqrt(grid[i] * grid[i - 1]);
            for (int n = 0; n < NODE.length; n++) {
                double f = middle * StrictMath.exp(half * NODE[n]);
                integrands.at(f, value);
                for (int k = 0; k < count; k++) {
                    sum[k] += WEIGHT[n] * half * f * value[k];
                }
            }
        }
        return sum;
    }
}
