/**
 * Results of shaker and its test plan: sensitivities, charts, a lot for sort, an empty run to fill in.
 *
 * <p>For other rooms: {@link quietband.report.shaker.PlanReport}, {@link quietband.report.shaker.ShakerReport}.
 */
package quietband.report.shaker;
