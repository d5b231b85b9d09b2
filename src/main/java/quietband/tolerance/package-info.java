/**
 * Units built to a design scatter: what share of them meets every requirement, and which tolerance costs the most.
 * {@code draw} draws a unit as a pure function of seed and index, {@code judge} judges it in one condition by the
 * equations of {@code kernel}, {@code campaign} does so for many, and {@code influence} asks where failures come
 * from.
 *
 * <p>Equations: physics.md, Tolerances.
 */
package quietband.tolerance;
