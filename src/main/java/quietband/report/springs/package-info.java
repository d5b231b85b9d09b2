/**
 * Results of springs: parts list, dimensioned sketch, charts, page; tuning of a unit on the bench.
 *
 * <p>For other rooms: {@link quietband.report.springs.BenchReport}, {@link quietband.report.springs.SpringReport}.
 */
package quietband.report.springs;
