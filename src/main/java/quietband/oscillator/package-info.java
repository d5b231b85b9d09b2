/**
 * The oscillator: how its resonator turns acceleration into fractional frequency, and how frequency becomes
 * sidebands and phase noise at the output. Main types: {@link quietband.oscillator.Sensitivity} and
 * {@link quietband.oscillator.Sidebands}.
 *
 * <p>Equations: physics.md, Resonator, Sidebands and phase noise.
 */
package quietband.oscillator;
