/**
 * Results of simulate: traces, spectra, sweeps beside the prediction of the frequency domain.
 *
 * <p>For other rooms: {@link quietband.report.motion.DwellFiles}, {@link quietband.report.motion.SweepFiles},
 * {@link quietband.report.motion.VibrationFiles}.
 */
package quietband.report.motion;
