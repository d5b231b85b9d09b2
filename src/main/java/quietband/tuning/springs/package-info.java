/**
 * From a wanted natural frequency, reduction or requirement to rates, damping, ballast and parts; tuning of a unit
 * on the bench.
 *
 * <p>Equations: physics.md, Springs as parts, Modes, Travel.
 *
 * <p>For other rooms: {@link quietband.tuning.springs.SpringPlanner},
 * {@link quietband.tuning.springs.BenchTuning}, {@link quietband.tuning.springs.SpringAnswer}.
 *
 * <p>With them: {@link quietband.tuning.springs.TravelOverFrequency}.
 */
package quietband.tuning.springs;
