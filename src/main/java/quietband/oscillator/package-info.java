/**
 * The oscillator: how its resonator turns acceleration into frequency, and how frequency becomes sidebands and phase
 * noise at the output. Main types: {@link quietband.oscillator.Sensitivity} and {@link quietband.oscillator.Sidebands}.
 */
package quietband.oscillator;
