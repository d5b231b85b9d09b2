/**
 * Results of sort: classes, accepted units, limits and guard bands, the page.
 *
 * <p>For other rooms: {@link quietband.report.lot.LotReport}.
 */
package quietband.report.lot;
