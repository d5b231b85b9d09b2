/**
 * The time domain: platform, resonator, sensors and cancellation as differential and difference equations, driven
 * by a translation of the housing. Nothing here knows the frequency domain. Main types:
 * {@link quietband.motion.run.Dwell} and {@link quietband.motion.run.VibrationRun}.
 *
 * <p>Equations: physics.md, Time domain.
 */
package quietband.motion;
