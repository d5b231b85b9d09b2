/**
 * Quantities swept against each other, or searched.
 */
package quietband.tuning.trade;
