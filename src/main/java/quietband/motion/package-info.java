/**
 * The time domain: platform, resonator, sensors and cancellation as differential and difference equations, driven
 * by a translation of the housing. Nothing here knows the frequency domain: poles, resonances, travel and ranges are worked out a
 * second time on purpose, as an independent check of the rooms that do. Main types:
 * {@link quietband.motion.run.Dwell} and {@link quietband.motion.run.VibrationRun}.
 *
 * <p>Equations: physics.md, Time domain.
 */
package quietband.motion;
