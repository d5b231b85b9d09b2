/**
 * Coefficients and signals as whole numbers: scaling, rounding, largest gain.
 */
package quietband.filter.fixedpoint;
