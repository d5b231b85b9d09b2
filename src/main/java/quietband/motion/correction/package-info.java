/**
 * The cancellation at work over time: sensors, path, converter, digital filter, tuning port; the resonator.
 */
package quietband.motion.correction;
