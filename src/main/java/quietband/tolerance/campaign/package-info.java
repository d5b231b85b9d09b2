/**
 * Many units, streamed: how many meet everything, in whole counts that depend on no number of threads, and
 * percentiles of the residual at every frequency of a table from counts of its level in steps of 0.017 to 0.034
 * dB.
 *
 * <p>Equations: physics.md, Tolerances.
 *
 * <p>For other rooms: {@link quietband.tolerance.campaign.MonteCarlo},
 * {@link quietband.tolerance.campaign.MonteCarloResult}, {@link quietband.tolerance.campaign.UnitReplay}.
 *
 * <p>With them: {@link quietband.tolerance.campaign.MarginCounts}, {@link quietband.tolerance.campaign.UnitRow}.
 */
package quietband.tolerance.campaign;
