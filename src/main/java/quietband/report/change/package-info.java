/**
 * Results of orient and trade: the changed model, tables, maps, pages.
 *
 * <p>For other rooms: {@link quietband.report.change.OrientReport}, {@link quietband.report.change.TradeReport},
 * {@link quietband.report.change.TradeSearchReport}.
 */
package quietband.report.change;
