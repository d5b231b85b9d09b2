/**
 * Numbers with units: amounts as people write them, dimensions, standard gravity. Main type:
 * {@link quietband.units.Amounts}.
 *
 * <p>Equations: physics.md, Conventions.
 */
package quietband.units;
