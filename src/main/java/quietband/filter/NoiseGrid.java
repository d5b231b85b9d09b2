package quietband.filter;

import java.util.List;
import quietband.demand.PhaseNoise;
import quietband.model.Axis;
import quietband.model.Requirement;

/**
 * {@link NoiseTerms} on a grid: what each row of the phase noise is made of at each frequency, what it is without cancellation, and the
 * trapezoid's weights of the integral.
 */
public final class NoiseGrid {

    private final List<PhaseNoise.Row> rows;
    private final double[][] vibration;
    private final double[][] sensor;
    private final double[] fixed;
    private final double[][] without;
    private final double[] width;
    private final boolean[] asked;

    /**
     * Works them out.
     *
     * @param grid     rising, Hz
     * @param residual at each of them
     * @param r        its jitter's band, or its own without one, is integrated over; no row may rise in its own
     */
    public NoiseGrid(NoiseTerms terms, double[] grid, List<ResidualTerms.At> residual, Requirement r) {
        int n = grid.length;
        rows = terms.rows();
        vibration = new double[n][3];
        sensor = new double[n][3];
        fixed = new double[n];
        without = new double[n][rows.size()];
        width = new double[n];
        asked = new boolean[n];
        double low = r.jitter().map(Requirement.Jitter::fromHz).orElse(r.fromHz());
        double high = r.jitter().map(Requirement.Jitter::toHz).orElse(r.toHz());
        for (int at = 0; at < n; at++) {
            double f = grid[at];
            double left = Math.max(low, at == 0 ? low : (grid[at - 1] + f) / 2);
            double right = Math.min(high, at == n - 1 ? high : (grid[at + 1] + f) / 2);
            width[at] = Math.max(0, right - left);
            asked[at] = f >= r.fromHz() * (1 - 1e-12) && f <= r.toHz() * (1 + 1e-12);
            fixed[at] = terms.fixed(f);
            for (int i = 0; i < 3; i++) {
                sensor[at][i] = terms.sensor(i, f);
                vibration[at][i] = terms.vibration(Axis.ALL.get(i), f);
            }
            for (int k = 0; k < rows.size(); k++) {
                without[at][k] = terms.without(rows.get(k), f, residual.get(at).plainSquared());
            }
        }
    }

    /** How many rows there are. */
    public int rows() {
        return rows.size();
    }

    /** The driven axes of a row. */
    public List<Axis> axes(int row) {
        return rows.get(row).axes();
    }

    /** Weight of a frequency in the integral, Hz; 0 outside of it. */
    public double width(int at) {
        return width[at];
    }

    /** Whether no row may rise there. */
    public boolean asked(int at) {
        return asked[at];
    }

    /** Weight of |y_j|^2. */
    public double vibration(int at, Axis axis) {
        return vibration[at][axis.ordinal()];
    }

    /** Weight of |F_i|^2. */
    public double sensor(int at, int i) {
        return sensor[at][i];
    }

    /** What no filter changes. */
    public double fixed(int at) {
        return fixed[at];
    }

    /** A row without cancellation. */
    public double without(int at, int row) {
        return without[at][row];
    }

    /** A row with |y_j|^2 per axis and |F_i|^2 per sensor. */
    public double total(int at, int row, double[] residual, double[] filter) {
        double sum = fixed[at];
        for (int i = 0; i < 3; i++) {
            sum += filter[i] * sensor[at][i];
        }
        for (Axis axis : axes(row)) {
            sum += residual[axis.ordinal()] * vibration(at, axis);
        }
        return sum;
    }
}
