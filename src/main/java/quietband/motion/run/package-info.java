/**
 * Passes over time and what they find: sweep, dwell, random vibration, shock, record.
 *
 * <p>Equations: physics.md, Time domain.
 *
 * <p>For other rooms: {@link quietband.motion.run.Dwell}, {@link quietband.motion.run.SineSweep},
 * {@link quietband.motion.run.VibrationRun}.
 *
 * <p>With them: {@link quietband.motion.run.LossError}, {@link quietband.motion.run.MotionTrace},
 * {@link quietband.motion.run.PassMonitor}, {@link quietband.motion.run.SweepCoverage}.
 */
package quietband.motion.run;
