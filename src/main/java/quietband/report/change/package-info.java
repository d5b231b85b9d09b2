/**
 * Results of orient and trade.
 */
package quietband.report.change;
