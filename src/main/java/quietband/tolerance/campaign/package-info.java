/**
 * Many units, streamed: how many meet everything, in whole counts that depend on no number of threads, and percentiles of the residual at
 * every frequency of a table from counts of its level in steps of 0.017 to 0.034 dB. For other rooms:
 * {@link quietband.tolerance.campaign.MonteCarlo}, {@link quietband.tolerance.campaign.MonteCarloResult} and
 * {@link quietband.tolerance.campaign.UnitReplay} (one unit as a model of its own).
 */
package quietband.tolerance.campaign;
