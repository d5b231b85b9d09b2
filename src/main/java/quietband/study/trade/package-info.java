/**
 * The best design within bounds, by margin or by yield.
 *
 * <p>For other rooms: {@link quietband.study.trade.DesignSearch}.
 */
package quietband.study.trade;
