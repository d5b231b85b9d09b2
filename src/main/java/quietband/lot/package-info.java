/**
 * Measured lots of resonators: the fitted normal distribution of their components, classes, yield, false accepts
 * and rejects, units to build. Main type: {@link quietband.lot.SortedLot}.
 *
 * <p>Equations: physics.md, Readings and lots, Tolerances.
 */
package quietband.lot;
