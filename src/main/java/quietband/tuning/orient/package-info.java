/**
 * The orientation of the resonator that serves best; supports of its blank.
 */
package quietband.tuning.orient;
