/**
 * Results of springs: parts list, dimensioned sketch, charts, page; tuning of a unit on the bench.
 *
 * <p>For other rooms: {@link quietband.report.springs.SpringFiles}, {@link quietband.report.springs.BenchFiles}.
 */
package quietband.report.springs;
