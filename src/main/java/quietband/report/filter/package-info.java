/**
 * Results of filter: tables, charts and page of a design, of an analog network, of a trim.
 *
 * <p>For other rooms: {@link quietband.report.filter.FilterReport}, {@link quietband.report.filter.NetworkReport},
 * {@link quietband.report.filter.TrimReport}.
 */
package quietband.report.filter;
