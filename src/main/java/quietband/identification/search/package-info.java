/**
 * Weighted nonlinear least squares over the free numbers: starts, noise, outliers, steps.
 */
package quietband.identification.search;
