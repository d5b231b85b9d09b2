/**
 * Results of simulate: traces, spectra, sweeps beside the prediction of the frequency domain.
 *
 * <p>For other rooms: {@link quietband.report.motion.DwellReport}, {@link quietband.report.motion.SweepReport},
 * {@link quietband.report.motion.VibrationReport}.
 */
package quietband.report.motion;
