/** Frequency grids, curves over frequency, densities and spectra; knows nothing of oscillators. */
package quietband.spectrum;
