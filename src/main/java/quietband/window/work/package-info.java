/**
 * Work away from the event thread: figures, variants, Monte Carlo, proposals.
 */
package quietband.window.work;
