/**
 * A unit as a pure function of seed and index: distributions, correlations, lots.
 */
package quietband.tolerance.draw;
