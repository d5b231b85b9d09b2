/**
 * From two shaker runs, cancellation off and on, to gain, phase and delay errors and weights of one unit.
 */
package quietband.identification.trim;
