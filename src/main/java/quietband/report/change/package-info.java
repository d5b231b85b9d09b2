/**
 * Results of orient and trade: the changed model, tables, maps, pages.
 *
 * <p>For other rooms: {@link quietband.report.change.OrientFiles}, {@link quietband.report.change.TradeFiles},
 * {@link quietband.report.change.TradeSearchFiles}.
 */
package quietband.report.change;
