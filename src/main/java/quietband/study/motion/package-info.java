/**
 * The design as it moves, with the frequency domain's prediction beside it: {@code DwellStudy}, {@code SweepStudy} and
 * {@code VibrationStudy}.
 *
 * <p>For other rooms: {@link quietband.study.motion.DwellStudy}, {@link quietband.study.motion.VibrationStudy},
 * {@link quietband.study.motion.SweepStudy}.
 *
 * <p>With them: {@link quietband.study.motion.PredictedSpectrum}, {@link quietband.study.motion.SpectrumAgreement}.
 */
package quietband.study.motion;
