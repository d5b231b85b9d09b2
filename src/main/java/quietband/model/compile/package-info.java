/**
 * From the checked value tree to slots for every number, and to the blocks of a design as functions of these
 * numbers.
 *
 * <p>Equations: physics.md, Rigid body.
 */
package quietband.model.compile;
