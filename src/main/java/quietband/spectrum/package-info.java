/**
 * Frequency grids that no narrow peak slips through, curves over frequency, integrals over them, averaged spectra;
 * knows nothing of oscillators. Main types: {@link quietband.spectrum.LogCurve},
 * {@link quietband.spectrum.SeededGrid} and {@link quietband.spectrum.AdaptiveCurves}.
 *
 * <p>Equations: physics.md, Frequency grids, Vibration, Time domain.
 */
package quietband.spectrum;
