/**
 * Feed-forward cancellation in the frequency domain: sensor, passes, digital filter, hold and tuning port as
 * functions of frequency, and the noise they add. Starts at the sensor, ends at the tuning voltage; what it leaves
 * of the oscillator's sensitivity is in {@code response}. Main type:
 * {@link quietband.cancellation.CancellationPath}.
 *
 * <p>Equations: physics.md, Cancellation path, Noise of the cancellation.
 */
package quietband.cancellation;
