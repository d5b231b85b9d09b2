/**
 * Gaps in the coverage, their leading cause, and the smallest change that meets the limit.
 *
 * <p>Equations: physics.md, Causes, Requirements.
 *
 * <p>For other rooms: {@link quietband.tuning.cures.Cures}, {@link quietband.tuning.cures.CoverageGap},
 * {@link quietband.tuning.cures.ShortestPaths}.
 *
 * <p>With them: {@link quietband.tuning.cures.Cure}, {@link quietband.tuning.cures.ValueChange}.
 */
package quietband.tuning.cures;
