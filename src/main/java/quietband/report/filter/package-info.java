/**
 * Results of filter: tables, charts and page of a design, of an analog network, of a trim.
 *
 * <p>For other rooms: {@link quietband.report.filter.FilterFiles}, {@link quietband.report.filter.AnalogFiles},
 * {@link quietband.report.filter.TrimFiles}.
 */
package quietband.report.filter;
