/**
 * Measured lots of resonators: fitted distribution, classes, yield, false accepts and rejects.
 */
package quietband.lot;
