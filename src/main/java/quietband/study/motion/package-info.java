/**
 * The design as it moves, with the frequency domain's prediction beside it: {@link DwellStudy}, {@link SweepStudy} and
 * {@link VibrationStudy}.
 */
package quietband.study.motion;
