/**
 * Electronic cancellation: an acceleration signal is filtered, weighted by the resonator's sensitivity and applied to the
 * tuning port with opposite sign. Starts at the sensor, ends at the tuning voltage; the net effect on the oscillator is
 * in {@code response}. Main type: {@link quietband.cancellation.CancellationPath}.
 */
package quietband.cancellation;
