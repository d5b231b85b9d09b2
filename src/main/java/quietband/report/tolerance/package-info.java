/**
 * Results of tolerance: units, percentiles, influence, yield, the page.
 *
 * <p>For other rooms: {@link quietband.report.tolerance.ToleranceFiles},
 * {@link quietband.report.tolerance.ToleranceTables}, {@link quietband.report.tolerance.ToleranceCurves}.
 */
package quietband.report.tolerance;
