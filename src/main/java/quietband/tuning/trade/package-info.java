/**
 * Quantities swept against each other, or searched for the best design; a fast verdict for searches.
 *
 * <p>Equations: physics.md, Requirements.
 *
 * <p>For other rooms: {@link quietband.tuning.trade.TradeSweep}, {@link quietband.tuning.trade.TradeSearch},
 * {@link quietband.tuning.trade.VariedQuantity}.
 */
package quietband.tuning.trade;
