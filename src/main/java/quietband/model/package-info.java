/**
 * The design as written: immutable records in SI units, one for each block of the model file, and the stacks it
 * has. The inner rooms read, check, compile, change and write it. Main type: {@link quietband.model.Design}.
 *
 * <p>Equations: physics.md, Conventions, Residual.
 */
package quietband.model;
