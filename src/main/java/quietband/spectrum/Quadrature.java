package quietband.spectrum;

/** Integrals over frequency of several functions at once, interval by interval of a grid that already resolves them. */
public final class Quadrature {

    /** Adds to each of several integrands' values at one frequency. */
    @FunctionalInterface
    public interface Integrands {
        /** Writes the values at a frequency in Hz into the array (length as given to {@code integrate}). */
        void at(double f, double[] into);
    }

    // Gauss-Legendre with five nodes on [-1, 1]; Abramowitz & Stegun, table 25.4 (from memory, checked by a test)
    private static final double[] NODE = {-0.906179845938664, -0.5384693101056831, 0, 0.5384693101056831, 0.906179845938664};
    private static final double[] WEIGHT = {0.23692688505618908, 0.47862867049936647, 0.5688888888888889,
        0.47862867049936647, 0.23692688505618908};

    private Quadrature() { }

    /**
     * Integrals from the first to the last node of the grid, by five-point Gauss-Legendre in log f in every interval.
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
