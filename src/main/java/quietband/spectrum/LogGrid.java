package quietband.spectrum;

/** Frequencies spaced evenly on a logarithmic axis. */
public final class LogGrid {

    private LogGrid() { }

    /**
     * Frequencies from one end to the other, both exactly included.
     *
     * @param n    how many, at least 2
     * @param from lower end in Hz, above 0
     * @param to   upper end in Hz, above {@code from}
     */
    public static double[] between(int n, double from, double to) {
        if (n < 2 || !(from > 0) || !(to > from)) {
            throw new IllegalArgumentException("at least 2 points and 0 < from < to, got " + n + ", " + from + ", " + to);
        }
        double[] f = new double[n];
        double span = StrictMath.log(to / from);
        for (int i = 0; i < n; i++) {
            f[i] = from * StrictMath.exp(span * i / (n - 1));
        }
        f[0] = from;
        f[n - 1] = to;
        return f;
    }
}
