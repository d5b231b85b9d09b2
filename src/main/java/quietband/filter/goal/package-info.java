/**
 * Goals and bounds of a design as second-order cones over the unknowns of three filters: least squares, least
 * worst ratio, least phase noise, bounds of gain and swing.
 *
 * <p>Equations: physics.md, Filter design, Sidebands and phase noise.
 */
package quietband.filter.goal;
