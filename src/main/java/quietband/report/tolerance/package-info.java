/**
 * Results of tolerance: units, percentiles, influence, yield, the page.
 *
 * <p>For other rooms: {@link quietband.report.tolerance.ToleranceReport}, {@link quietband.report.tolerance.UnitTable}.
 */
package quietband.report.tolerance;
