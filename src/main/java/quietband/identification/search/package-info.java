/**
 * Weighted nonlinear least squares over the free numbers within bounds: starts, noise, outliers, steps.
 *
 * <p>Equations: physics.md, Fit.
 */
package quietband.identification.search;
