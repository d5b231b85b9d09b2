/**
 * Results of compare: two designs side by side, or a design and a measurement.
 *
 * <p>For other rooms: {@link quietband.report.compare.ComparisonFiles},
 * {@link quietband.report.compare.MeasuredFiles}, {@link quietband.report.compare.DesignComparison}.
 */
package quietband.report.compare;
