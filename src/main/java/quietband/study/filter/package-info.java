/**
 * What the command filter is asked: digital filters ({@code FilterDesign}), networks of real parts ({@code NetworkDesign}), and a
 * cancellation trimmed from two runs ({@code TrimStudy}).
 *
 * <p>For other rooms: {@link quietband.study.filter.FilterDesign}, {@link quietband.study.filter.AllowedTable},
 * {@link quietband.study.filter.TrimStudy}.
 *
 * <p>With them: {@link quietband.study.filter.FilterCurves}, {@link quietband.study.filter.NetworkDesign},
 * {@link quietband.study.filter.ResidualChange}, {@link quietband.study.filter.TuningPort}.
 */
package quietband.study.filter;
