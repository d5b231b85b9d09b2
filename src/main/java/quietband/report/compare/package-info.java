/**
 * Results of compare: two designs side by side, or a design and a measurement.
 *
 * <p>For other rooms: {@link quietband.report.compare.ComparisonReport},
 * {@link quietband.report.compare.MeasuredReport}.
 */
package quietband.report.compare;
