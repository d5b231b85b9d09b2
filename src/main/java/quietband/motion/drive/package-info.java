/**
 * What moves the housing: sine, stationary noise, pulse, record; bad records are refused with what is wrong.
 *
 * <p>Equations: physics.md, Time domain, Vibration.
 *
 * <p>For other rooms: {@link quietband.motion.drive.MotionRecord},
 * {@link quietband.motion.drive.MotionRecordFile}.
 *
 * <p>With them: {@link quietband.motion.drive.MotionRecordException}.
 */
package quietband.motion.drive;
