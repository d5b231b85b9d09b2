/**
 * The equations of one unit on blocks of frequencies, in plain arrays.
 */
package quietband.tolerance.kernel;
