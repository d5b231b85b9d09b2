/**
 * Every number of a design by path.
 */
package quietband.model.quantity;
