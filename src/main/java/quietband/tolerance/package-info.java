/**
 * Units built to a design scatter: what share of them meets every requirement, and which tolerance costs the most.
 * {@link quietband.tolerance.draw.ToleranceDraws} draws a unit as a pure function of seed and index,
 * {@link quietband.tolerance.judge.UnitJudge} judges it in one condition, {@link quietband.tolerance.campaign.MonteCarlo} does so for many, and
 * {@link quietband.tolerance.influence.SobolIndices}, {@link quietband.tolerance.influence.ToleranceInfluence} and {@link quietband.tolerance.influence.LikeliestFailure} ask where
 * the failures come from.
 */
package quietband.tolerance;
