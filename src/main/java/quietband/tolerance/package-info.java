/**
 * Units built to a design scatter: what share of them meets every requirement, and which tolerance costs the most.
 * {@link quietband.tolerance.Scatter} draws a unit as a pure function of seed and index,
 * {@link quietband.tolerance.UnitJudge} judges it in one condition, {@link quietband.tolerance.Campaign} does so for many, and
 * {@link quietband.tolerance.Sobol}, {@link quietband.tolerance.Influence} and {@link quietband.tolerance.LikeliestFailure} ask where
 * the failures come from.
 */
package quietband.tolerance;
