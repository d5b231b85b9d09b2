/**
 * The vibration environment: random profiles from points or files, and shock pulses. Main types:
 * {@link quietband.vibration.Profile} and {@link quietband.vibration.Pulse}.
 *
 * <p>Equations: physics.md, Vibration.
 */
package quietband.vibration;
