package quietband.study.filter;

import java.util.List;
import org.hipparchus.complex.Complex;
import quietband.cancellation.FilterResponse;
import quietband.filter.IdealFilter;
import quietband.filter.design.FilterResult;
import quietband.model.Design;
import quietband.response.ResidualCurves;
import quietband.spectrum.LogGrid;

/**
 * Filters and residual over frequency.
 *
 * @param frequencyHz of the filters, up to nearly half the sample rate, Hz (not copied, do not modify)
 * @param ideal       filters that would leave nothing, whether a device can have them or not: magnitude in dB, phase in deg, group
 *                    delay in us, by sensor and frequency; NaN where there is none (not copied, do not modify)
 * @param reached     the same of those found
 * @param before      residual as the model stands
 * @param after       the same with the filters found
 */
public record FilterCurves(double[] frequencyHz, double[][][] ideal, double[][][] reached, ResidualCurves before, ResidualCurves after) {

    private static final int POINTS = 300;
    private static final double APART = 1e-3;

    /** Three filters at a frequency. */
    private interface Filters {
        Complex[] at(double f);
    }

    static FilterCurves of(FilterResult result) {
        Design design = result.changed();
        IdealFilter ideal = new IdealFilter(design, result.task().measured());
        double rate = design.cancellation().orElseThrow().path().sampleRateHz();
        List<FilterResponse> own = result.found().filters().stream().map(f -> new FilterResponse(f, rate)).toList();
        double[] grid = LogGrid.between(POINTS, design.requirement().fromHz(), Math.min(design.requirement().toHz(), 0.499 * rate));
        return new FilterCurves(grid, values(ideal::at, grid), values(f -> own.stream().map(r -> r.at(f)).toArray(Complex[]::new), grid),
            ResidualCurves.of(result.before().design(), POINTS), ResidualCurves.of(design, POINTS));
    }

    private static double[][][] values(Filters filters, double[] grid) {
        double[][][] v = new double[3][3][grid.length];
        for (int n = 0; n < grid.length; n++) {
            Complex[] at = filters.at(grid[n]);
            Complex[] above = filters.at(grid[n] * (1 + APART));
            Complex[] below = filters.at(grid[n] * (1 - APART));
            for (int i = 0; i < 3; i++) {
                v[0][i][n] = 20 * StrictMath.log10(at[i].norm());
                double phase = Math.toDegrees(StrictMath.atan2(at[i].getImaginary(), at[i].getReal()));
                v[1][i][n] = n == 0 ? phase : v[1][i][n - 1] + Math.IEEEremainder(phase - v[1][i][n - 1], 360);
                Complex turn = above[i].multiply(below[i].conjugate());
                v[2][i][n] = -1e6 * StrictMath.atan2(turn.getImaginary(), turn.getReal()) / (4 * Math.PI * grid[n] * APART);
            }
        }
        return v;
    }
}
